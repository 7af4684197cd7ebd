using System.Diagnostics;
using System.Text.Json;
using ShopDrawings.Cutting;

var set = args[0]; var variant = args[1]; var every = int.Parse(args[2]); var secs = double.Parse(args[3]); var lanesN = args.Length > 4 ? int.Parse(args[4]) : 4;
var data = "/work/shared/data/cutting/";
var doc = JsonDocument.Parse(File.ReadAllText(data + set + ".json"));
var best = File.ReadAllLines(data + "best-known.csv").Skip(1).Select(l => l.Split(',')).Where(f => f[0] == set).ToLookup(f => f[1] + "/" + f[2] + "/" + f[3]);
var objective = doc.RootElement.GetProperty("objective").GetString()!.Split(' ')[0].TrimEnd(',');
int n = 0, over = 0, proved = 0; long total = 0, bestTotal = 0, lowerTotal = 0, bounds = 0; long efforts = 0; double time = 0;
var groups = new SortedDictionary<string, (long, long,long, double, int)>();
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
    using var cts = new CancellationTokenSource(TimeSpan.FromSeconds(secs));
    var solver = new Solver(w, lanesN, 1, cts.Token);
    var r = solver.Run(long.MaxValue / 2);
    time += sw.Elapsed.TotalSeconds; efforts += solver.Effort;
    if (r is null) { Console.WriteLine(name + " nothing, bound " + solver.Bound); continue; }
    var price = r.Value.Price;
    if (solver.Bound > upper) Console.WriteLine($"{name} BOUND {solver.Bound} above {upper}");
    if (solver.Bound < lower) Console.Write($"[{name} {solver.Bound}<{lower}]");
    bounds += solver.Bound!.Value; if (price <= solver.Bound) proved++;
    var g = inst.GetProperty("group").GetString()!.Split('/')[0];
    groups.TryGetValue(g, out var t); groups[g] = (t.Item1 + price, t.Item2 + upper, t.Item3+lower, t.Item4 + 100.0 * w.X.Zip(w.Y).Sum(a => a.First*a.Second) / (objective == "area" ? price : price * stock[0].W*stock[0].H), t.Item5+1);
    total += price; bestTotal += upper; lowerTotal += lower; if (price > upper) over++;
    if (args.Length > 5) Console.WriteLine($"{name} {price} {upper} {lower} bound {solver.Bound}");
}
Console.WriteLine();
foreach (var (g, t) in groups) Console.Write($"{g}: {t.Item1}/{t.Item2}/{t.Item3} {t.Item4/t.Item5:0.0}%  ");
Console.WriteLine($"\n{set} {variant} total {total} best {bestTotal} lower {lowerTotal} our bounds {bounds} proved {proved} worse in {over}; {time:0.0} s, {efforts / time / 1e6:0} M effort/s");
