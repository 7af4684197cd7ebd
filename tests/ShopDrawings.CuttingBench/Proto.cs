using System.Diagnostics;
using System.Text.Json;
using ShopDrawings.Cutting;

var set = args[0]; var variant = args[1]; var every = int.Parse(args[2]); var secs = double.Parse(args[3]);
var data = "/work/shared/data/cutting/";
var doc = JsonDocument.Parse(File.ReadAllText(data + set + ".json"));
var best = File.ReadAllLines(data + "best-known.csv").Skip(1).Select(l => l.Split(',')).Where(f => f[0] == set).ToLookup(f => f[1] + "/" + f[2] + "/" + f[3]);
var objective = doc.RootElement.GetProperty("objective").GetString()!.Split(' ')[0].TrimEnd(',');
int n = 0, over = 0; long total = 0, bestTotal = 0, lowerTotal = 0; long efforts = 0; double time = 0; int steps = 0;
var groups = new SortedDictionary<string, (long, long,long)>();
foreach (var inst in doc.RootElement.GetProperty("instances").EnumerateArray())
{
    if (n++ % every != 0) continue;
    var name = inst.GetProperty("name").GetString()!;
    var X = new List<long>(); var Y = new List<long>(); var K = new List<int>(); var L = new List<byte>(); var kind = 0;
    foreach (var it in inst.GetProperty("items").EnumerateArray())
    {
        for (var q = 0; q < it[2].GetInt32(); q++) { X.Add(it[0].GetInt64()); Y.Add(it[1].GetInt64()); K.Add(kind); for (var z = 0; z < 3; z++) L.Add(variant[0] == 'O' || X[^1] == Y[^1] ? (byte)1 : (byte)3); }
        kind++;
    }
    var stock = inst.GetProperty("sheets").EnumerateArray().Select(s => new Workload.Sheet(s[0].GetInt64(), s[1].GetInt64(), objective == "area" ? s[0].GetInt64() * s[1].GetInt64() : 1, s[2].ValueKind == JsonValueKind.Null ? int.MaxValue : s[2].GetInt32(), 0)).ToArray();
    var w = new Workload { X = [.. X], Y = [.. Y], KindOf = [.. K], Lies = [.. L], Stock = stock }.Ready();
    var row = best[name + "/" + variant + "/" + objective].First();
    var lower = long.Parse(row[4]); var upper = row[6] == "" ? lower : long.Parse(row[6]);
    var sw = Stopwatch.StartNew();
    var lane = new Lane(w, 1);
    for (var k = 0; k < 16; k++) if (lane.Construct(k % 8, k < 8 ? 0 : 24)) { if (lane.BestPrice > 0 && PriceOf(lane) < lane.BestPrice) lane.Keep(); }
    long PriceOf(Lane l) => l.Price;
    var step = stock.Min(s => s.Price);
    if (lane.Best is null) { Console.WriteLine(name + " no start"); continue; }
    lane.Adopt(lane.Best!, lane.BestPrice);
    while (sw.Elapsed.TotalSeconds < secs && lane.BestPrice > lower)
    {
        lane.Aim(lane.BestPrice - 1);
        var whole = false;
        while (!whole && sw.Elapsed.TotalSeconds < secs) for (var k = 0; k < 50 && !whole; k++) { whole = lane.Step(); steps++; }
        if (whole) lane.Keep();
    }
    time += sw.Elapsed.TotalSeconds; efforts += lane.Effort;
    var g = inst.GetProperty("group").GetString()!.Split('/')[0];
    groups.TryGetValue(g, out var t); groups[g] = (t.Item1 + lane.BestPrice, t.Item2 + upper, t.Item3+lower);
    total += lane.BestPrice; bestTotal += upper; lowerTotal += lower; if (lane.BestPrice > upper) over++;
}
foreach (var (g, t) in groups) Console.Write($"{g}: {t.Item1}/{t.Item2}/{t.Item3} {100.0*t.Item3/t.Item1:0.0}%  ");
Console.WriteLine($"\n{set} {variant} total {total} best {bestTotal} lower {lowerTotal} worse in {over}; {time:0.0} s, {efforts / time / 1e6:0} M effort/s, {steps / time:0} steps/s");
