using System.Text;
using ShopDrawings.Cli;
using ShopDrawings.Cutting;

namespace ShopDrawings.Tests.CutPlans;

/// <summary><c>cut</c>: two tables in, sheets and lists out.</summary>
public class CutCommandTests
{
    private static readonly string Tables = Path.Combine(Fixtures.Folder, "cutting");

    [Fact]
    public void Tables_of_a_wardrobe_become_sheets_cuts_and_costs()
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("cut", Path.Combine(Tables, "panels.csv"), "--stock", Path.Combine(Tables, "stock.csv"), "--currency", "crowns", "--out", folder["out"]);

        Assert.Equal((0, ""), (call.ExitCode, call.Errors));
        Assert.Contains("white-18: 1 of full + 1 of from-the-desk, 96.40 crowns", call.Output, StringComparison.Ordinal);
        var files = TemporaryFolder.Contents(folder["out"]);
        Assert.Superset(new HashSet<string> { "sheets/white-18-1.svg", "sheets/white-18-2.svg", "lists/sheets.csv", "lists/cuts.csv", "lists/offcuts.csv", "drawings/sheets.pdf" }, files.Keys.ToHashSet());
        var panels = new CutsList(Encoding.UTF8.GetString(files["lists/cuts.csv"])).Panels;
        Assert.Equal(14, panels.Count);
        Assert.Equal([560.0, 764], new[] { panels["shelf #3"].Length, panels["shelf #3"].Width }.Order());
    }

    // 2438.4 within 10 mm of trim at both ends is 2418.4: four pieces of 568 and four kerfs of 3.2 leave 133.6, of 3.175 leave 133.7
    // (worked by hand: L − n·p − n·k).
    [Theory]
    [InlineData("3.2", "133.6")]
    [InlineData("1/8 in", "133.7")]
    public void Kerf_is_taken_off_what_remains(string kerf, string rest)
    {
        var list = Read("panel,length,width,count,grain\ndrawer,568,1199.2,4,along\n", "length,width,trim,grain\n96 in,48 in,10,length\n", new CutListSettings { Kerf = kerf });

        var offcuts = Text(list, "lists/offcuts.csv");

        Assert.Equal(rest, Assert.Single(CutsList.Read(offcuts))["length_mm"]);
    }

    // Three of 400 take 1200 without kerf and 1206.4 with two; 1199.2 holds neither, 1206.4 holds them just.
    [Theory]
    [InlineData("1206.4", 1)]
    [InlineData("1206.3", 2)]
    public void What_fits_without_a_kerf_need_not_fit_with_it(string length, int sheets) =>
        Assert.Equal(sheets, Assert.Single(Read("panel,length,width,count\na,400,300,3\n", $"length,width\n{length},300\n").Plan()).Plan!.Sheets.Length);

    [Fact]
    public void Rules_of_a_store_and_a_saw_at_home_come_from_a_file()
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("cut", Path.Combine(Tables, "panels.csv"), "--stock", Path.Combine(Tables, "stock.csv"), "--rules", Path.Combine(Tables, "store.yaml"), "--out", folder["out"]);

        Assert.Equal(0, call.ExitCode);
        var files = TemporaryFolder.Contents(folder["out"]);
        var store = CutsList.Read(Encoding.UTF8.GetString(files["lists/store-cuts.csv"])).ToList();
        Assert.All(store.GroupBy(r => r["sheets"]), sheet => Assert.InRange(sheet.Count(), 1, 6));
        // The back, 1960 long, in a blank with 5 mm on both ends and 1 mm the store's cut may be off.
        Assert.Contains(store, r => r["board"] == "hardboard-4" && r["gives_length_mm"] == "1971");
        Assert.Equal(14, new CutsList(Encoding.UTF8.GetString(files["lists/cuts.csv"])).Panels.Count);
    }

    [Theory]
    [InlineData("saw: {kerf: 3}\nsaws: 2\n", "", "rules.yaml(2,1): error: the file of rules has no key “saws”; did you mean “saw”?")]
    [InlineData("router: {gap: 10}\nsaw: {kerf: 3}\n", "", "rules.yaml(1,9): error: a router cuts panels out alone; leave “saw” and “store” out, or “router”")]
    [InlineData("store: {cuts: 3, heaviest: 20}\n", "", "rules.yaml(1,28): error: tables do not say what a board weighs; leave “heaviest” out, or say the “longest” side")]
    [InlineData("store: {cuts: 3, price: 1}\n", "", "rules.yaml(1,25): error: a cut has a price here, and sheets have none; give both a price, or neither")]
    [InlineData("saw: {kerf: 3}\n", "3", "(0,0): error: rules.yaml says how the stock is cut; leave all other options but title and unit out, and write what they say into it")]
    public void Wrong_rules_are_refused_with_their_message(string rules, string kerf, string message)
    {
        var read = CutList.Read("panel,length,width\na,10,20\n", "panels.csv", "length,width\n100,100\n", "stock.csv", new CutListSettings { Rules = rules, RulesName = "rules.yaml", Kerf = kerf });

        Assert.Equal([message], read.Diagnostics.Select(d => d.ToString()));
    }

    [Fact]
    public void Offcuts_are_stock_the_next_time()
    {
        var list = Read("panel,length,width,board\na,600,400,white\n", "board,length,width,price\nwhite,2440,1220,50\n");
        var offcuts = Text(list, "lists/offcuts.csv");

        var next = Assert.Single(Read("panel,length,width,board\nb,600,400,white\n", offcuts).Plan());

        Assert.Equal(0, next.Plan!.Cost);
    }

    [Theory]
    [InlineData("", "length,width\n1,1\n", "panels.csv(1,1): error: the file is empty; begin with a line of headings like panel,length,width")]
    [InlineData("panel;length;width\na;1;2\n", "length,width\n1,1\n", "panels.csv(1,1): error: columns are separated by semicolons; separate them by commas")]
    [InlineData("panel,lenght,width\na,1,2\n", "length,width\n1,1\n", "panels.csv(1,7): error: “lenght” is no heading of a panel; did you mean “length”?")]
    [InlineData("panel,length\na,1\n", "length,width\n1,1\n", "panels.csv(1,1): error: there is no column “width”, which a panel needs")]
    [InlineData("panel,length,width\n", "length,width\n1,1\n", "panels.csv(1,1): error: no panel stands below the headings")]
    [InlineData("panel,length,width\na,1,2,3\n", "length,width\n1,1\n", "panels.csv(2,7): error: this row has 4 cells below 3 headings; put a cell with a comma in quotes")]
    [InlineData("panel,length,width\na,568,3,20\n", "length,width\n1,1\n", "panels.csv(2,9): error: this row has 4 cells below 3 headings; put a cell with a comma in quotes")]
    [InlineData("panel,length,width\na,\"1,2\n", "length,width\n1,1\n", "panels.csv(2,3): error: a quote is not closed in this line; close it, or leave the quotes out")]
    [InlineData("panel,length,width\na,,20\n", "length,width\n100,100\n", "panels.csv(2,1): error: this row has no length")]
    [InlineData("panel,length,width\na,0,20\n", "length,width\n100,100\n", "panels.csv(2,3): error: “0” stands where a length from 0.01 mm to 100 m is expected; is the unit right?")]
    [InlineData("panel,length,width,count\na,10,20,2.5\n", "length,width\n100,100\n", "panels.csv(2,9): error: “2.5” stands where a whole number from 1 to 100000 is expected")]
    [InlineData("panel,length,width,grain\na,10,20,up\n", "length,width\n100,100\n", "panels.csv(2,9): error: “up” stands where any, along or across is expected")]
    [InlineData("panel,length,width\na,10,20\na,10,20\n", "length,width\n100,100\n", "panels.csv(3,1): error: “a” stands in line 2 already; raise its count, or choose another name")]
    [InlineData("panel,length,width,board\na,10,20\n", "length,width,board\n100,100,oak\n", "panels.csv(2,1): error: this row has no board")]
    [InlineData("panel,length,width,board\na,10,20,oak\n", "length,width\n100,100\n", "stock.csv(1,1): error: the other table says the “board” of each row, and this one does not; add the column, or leave it out of both")]
    [InlineData("panel,length,width,board\na,10,20,oak\n", "length,width,board\n100,100,ash\n", "panels.csv(2,9): error: no stock is given of board “oak”; known are ash")]
    [InlineData("panel,length,width,board\na,10,20,../x\n", "length,width,board\n100,100,../x\n", "panels.csv(2,9): error: “../x” names files; a board's name has letters A–Z, digits, dashes and underscores, like white-18")]
    [InlineData("panel,length,width\na,10,20\n", "length,width,price\n100,100,\"3,50\"\n", "stock.csv(2,9): error: “3,50” stands where a price like 64.90 is expected; write decimals with a point")]
    [InlineData("panel,length,width\na,10,20\n", "length,width,trim\n100,100,50\n", "stock.csv(2,1): error: what is cut or kept off its edges leaves nothing of this sheet; is the unit right?")]
    public void Wrong_table_is_refused_with_its_message(string panels, string stock, string message)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["panels.csv"], panels);
        File.WriteAllText(folder["stock.csv"], stock);

        var call = Call.Of("cut", folder["panels.csv"], "--stock", folder["stock.csv"], "--out", folder["out"]);

        Assert.Equal(ExitCode.WrongInput, call.ExitCode);
        Assert.Contains(message, call.Errors.Replace(folder.Path + Path.DirectorySeparatorChar, "", StringComparison.Ordinal).Split('\n'));
        Assert.EndsWith("nothing was written\n", call.Errors, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder["out"]));
    }

    [Fact]
    public void Plan_that_cannot_be_is_said_and_ends_with_1()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["panels.csv"], "panel,length,width\nlong,3000,200\n");
        File.WriteAllText(folder["stock.csv"], "length,width\n2440,1220\n");

        var call = Call.Of("cut", folder["panels.csv"], "--stock", folder["stock.csv"], "--out", folder["out"]);

        Assert.Equal(ExitCode.DoneWithErrors, call.ExitCode);
        Assert.Contains("long, 3000 × 200 mm, fits no sheet", call.Errors, StringComparison.Ordinal);
        Assert.Contains("560 mm too short", call.Errors, StringComparison.Ordinal);
        Assert.Equal([OutputFolder.Manifest, "lists/sheets.csv"], TemporaryFolder.Contents(folder["out"]).Keys);
    }

    [Fact]
    public void Stopped_search_gives_the_best_so_far()
    {
        using var stop = new CancellationTokenSource();
        var list = Read(string.Concat(Enumerable.Range(0, 60).Select(k => $"p{k},{300 + k * 37 % 411},{200 + k * 53 % 317}\n").Prepend("panel,length,width\n")), "length,width,price\n2440,1220,50\n1220,1220,31\n", new CutListSettings { Effort = 1000 });

        var plan = Assert.Single(list.Plan(new Stopper(stop), stop.Token)).Plan!;

        Assert.Equal(60, plan.Sheets.Sum(s => s.Placements.Length));
    }

    [Fact]
    public void Call_that_is_stopped_writes_the_best_so_far_or_changes_nothing()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["panels.csv"], string.Concat(Enumerable.Range(0, 60).Select(k => $"p{k},{300 + k * 37 % 411},{200 + k * 53 % 317}\n").Prepend("panel,length,width\n")));
        File.WriteAllText(folder["stock.csv"], "length,width,price\n2440,1220,50\n1220,1220,31\n");
        string[] call = ["cut", folder["panels.csv"], "--stock", folder["stock.csv"], "--out", folder["out"], "--effort", "1000"];
        using var soon = new CancellationTokenSource(TimeSpan.FromSeconds(4));

        var stopped = Call.Of(soon.Token, call);

        Assert.Equal(ExitCode.Interrupted, stopped.ExitCode);
        Assert.Contains("interrupted; the best plan so far was written", stopped.Errors, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder["out"], "lists", "cuts.csv")));
    }

    private static CutList Read(string panels, string stock, CutListSettings? settings = null)
    {
        var read = CutList.Read(panels, "panels.csv", stock, "stock.csv", settings);
        Assert.True(read.Diagnostics.IsEmpty, string.Join('\n', read.Diagnostics));
        return read.Value!;
    }

    private static string Text(CutList list, string path)
    {
        using var stream = new MemoryStream();
        list.Files(list.Plan()).Single(f => f.Path == path).Write(stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private sealed class Stopper(CancellationTokenSource stop) : IProgress<CuttingProgress>
    {
        public void Report(CuttingProgress value)
        {
            if (value.Cost is not null) stop.Cancel();
        }
    }
}
