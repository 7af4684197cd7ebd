using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Machining;

/// <summary>Programs run through an interpreter that is not ours, and what it does held against the model as it is published.</summary>
public partial class ProgramOracleTests
{
    // In mm.
    private const double Wanted = 0.001;

    // The interpreter prints to a ten-thousandth of the program's unit: in inches its own print may be off by half of that.
    private const double InchPrint = 0.00005 * 25.4;

    public static TheoryData<string> Samples
    {
        get
        {
            var root = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");
            return [.. Directory.GetDirectories(root).SelectMany(d => Directory.GetFiles(d, "*", SearchOption.AllDirectories)).Where(f => f.Contains("/programs/", StringComparison.Ordinal)).Select(f => Path.GetRelativePath(root, f)).Order(StringComparer.Ordinal)];
        }
    }

    // Every fixture in two of the four ways, since each program takes an interpreter of its own.
    public static TheoryData<string, string> Ways
    {
        get
        {
            string[][] pairs = [["mm cycles face", "in moves table"], ["in cycles face peck", "mm moves face peck"]];
            var ways = new TheoryData<string, string>();
            foreach (var (name, k) in Fixtures.Names.Select((n, k) => (n.Data, k)))
                foreach (var way in pairs[k % 2]) ways.Add(name, way);
            return ways;
        }
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public void Sample_program_runs_as_the_interpreter_understands_it(string path)
    {
        var text = File.ReadAllText(Path.Combine(OutsideProgram.RepositoryRoot, "output-samples", path));

        Assert.All(text, c => Assert.True(c is '\n' or (>= ' ' and <= '~')));
        var report = Run(text, ["--units", path.Contains("-in.", StringComparison.Ordinal) ? "in" : "mm"], isSafe: text.Contains("Z COUNTS FROM THE FACE", StringComparison.Ordinal));
        Assert.NotEmpty(report);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Bores_are_where_the_model_says_and_nothing_goes_deeper_than_the_allowance(string fixture, string way)
    {
        var design = Fixtures.Design(fixture);
        var (isInches, isOnTable) = (way.Contains("in ", StringComparison.Ordinal), way.Contains("table", StringComparison.Ordinal));
        var settings = new ProgramSettings { HasCycles = way.Contains("cycles", StringComparison.Ordinal), IsZeroOnTable = isOnTable, Peck = way.Contains("peck", StringComparison.Ordinal) ? 5 : null, HasChanger = !isOnTable, HasLineNumbers = isOnTable };
        var machines = design.Machining.Where(m => m.Profile.Machine.Name is "router" or "lab-router" or "bench-router")
            .Select(m => m with { Profile = m.Profile with { Programs = settings, Dxf = m.Profile.Dxf with { Unit = isInches ? DrawingUnit.Inch : DrawingUnit.Millimetre } } });
        var job = new Job(design with { Machining = [.. machines] }, [], []);
        if (job.Design.Machining.IsEmpty) return;
        var outputs = Shop.Export(job, ExporterSet.Standard);
        using var assembly = JsonDocument.Parse(Bytes(outputs.Single(o => o.Path == "assembly.json")));
        var bores = 0;
        foreach (var (profile, plan) in job.Design.Machining)
            foreach (var program in plan.Programs.Where(p => p.Sheet is null))
            {
                var output = outputs.Single(o => o.Path == $"machines/{profile.Machine.Name}/programs/panels/{program.Name}-{(isInches ? "in" : "mm")}.nc");
                bores += Demand(System.Text.Encoding.ASCII.GetString(Bytes(output)), program, assembly.RootElement, isInches, isOnTable, settings);
            }

        Assert.Equal(design.Assembly.Panels.Any(p => p.Features.OfType<Bore>().Any(b => b.Method == BoreMethod.Machined && b.Surface.IsFace())), bores > 0);
    }

    private static int Demand(string text, FaceProgram program, JsonElement assembly, bool isInches, bool isOnTable, ProgramSettings settings)
    {
        var id = program.Name.Replace("_outside", "", StringComparison.Ordinal).Replace("_inside", "", StringComparison.Ordinal);
        var panel = assembly.GetProperty("panels").EnumerateArray().Single(p => p.GetProperty("id").GetString() == id);
        var unit = isInches ? 25.4 : 1;
        var near = Wanted + (isInches ? InchPrint : 0);
        var written = Words().Matches(text).Select(m => (X: unit * Number(m.Groups[1].Value), Y: unit * Number(m.Groups[2].Value))).ToHashSet();
        double Of(string key) => panel.GetProperty(key).GetProperty("value").GetDouble();
        var thickness = Of("thickness_mm");
        var top = isOnTable ? thickness : 0;
        string Print(double mm) => (mm / unit).ToString("0.#######", CultureInfo.InvariantCulture);
        var moves = Run(text, ["--units", isInches ? "in" : "mm", "--deepest", Print(top - thickness - settings.Spoil - 0.0003 - (isInches ? InchPrint : 0)), "--safe", Print(top - 0.0002 - (isInches ? InchPrint : 0))], isSafe: false)
            .Select(m => m with { X = m.X * unit, Y = m.Y * unit, Z = m.Z * unit - top, Cx = m.Cx * unit, Cy = m.Cy * unit }).ToList();

        // Where the program bores: it comes to a place rapidly, is fed down and goes away rapidly.
        var holes = new List<(double X, double Y, double Depth)>();
        for (var i = 0; i < moves.Count;)
        {
            var visit = moves.Skip(i).TakeWhile(m => !m.IsArc && m.X == moves[i].X && m.Y == moves[i].Y).ToList();
            var next = i + Math.Max(1, visit.Count);
            if (visit.Count > 0 && visit[0].IsRapid && visit.Exists(m => !m.IsRapid) && (next == moves.Count || moves[next].IsRapid)) holes.Add((moves[i].X, moves[i].Y, -visit.Min(m => m.Z)));
            i = next;
        }

        var up = text.Contains("UP LIES THE OUTSIDE", StringComparison.Ordinal) ? "outside" : "inside";
        var expected = new List<(double X, double Y, double Depth, double Diameter)>();
        foreach (var bore in panel.GetProperty("features").EnumerateArray().Where(f => f.GetProperty("type").GetString() == "bore"))
        {
            var (surface, depth, diameter) = (bore.GetProperty("surface").GetString()!, bore.GetProperty("depth_mm"), bore.GetProperty("diameter_mm").GetDouble());
            if (surface is not ("inside" or "outside") || bore.GetProperty("method").GetString() != "machined") continue;
            var isThrough = depth.ValueKind == JsonValueKind.Null;
            if (isThrough ? program.IsSecond : surface != up) continue;
            var (x, y) = Place(bore.GetProperty("at_mm")[0].GetDouble(), bore.GetProperty("at_mm")[1].GetDouble());
            // Of a countersink the cone is 90 degrees: its point lies as deep as its mouth is half wide.
            var reach = bore.GetProperty("use").GetString() == "countersink" ? diameter / 2 : isThrough ? thickness + settings.Spoil : depth.GetDouble();
            expected.Add((x, y, reach, diameter));
        }

        foreach (var (x, y, depth, diameter) in expected)
        {
            var isBored = holes.Exists(h => Math.Abs(h.X - x) < near && Math.Abs(h.Y - y) < near && Math.Abs(h.Depth - depth) < near);
            // A milled one is rounded at its depth about its middle by a cutter of the machine.
            var isMilled = moves.Exists(m => m.IsArc && Math.Abs(m.Cx - x) < near && Math.Abs(m.Cy - y) < near && Math.Abs(m.Z + depth) < near
                && program.Machine.Tools.Any(t => t.Kind == ToolKind.Cutter && Math.Abs(2 * Math.Sqrt(Math.Pow(m.X - m.Cx, 2) + Math.Pow(m.Y - m.Cy, 2)) + t.Diameter - diameter) < 2 * near));
            var isRefused = text.Contains("NOT MADE HERE", StringComparison.Ordinal) && !program.Machine.Tools.Any(t => Math.Abs(t.Diameter - diameter) < 0.01);
            // As it is written, it is true to the thousandth in any unit.
            Assert.True(!isBored || written.Any(w => Math.Abs(w.X - x) < Wanted && Math.Abs(w.Y - y) < Wanted), $"{program.Name}: no words for {x}, {y}");
            Assert.True(isBored || isMilled || isRefused, string.Create(CultureInfo.InvariantCulture, $"{program.Name}: bore of {diameter} at {x}, {y}, {depth} deep is not made"));
        }

        foreach (var (x, y, depth) in holes)
        {
            var isPin = program.Pins.Any(p => Math.Abs(p.At.X - x) < near && Math.Abs(p.At.Y - y) < near);
            var isOpening = program.Operations.OfType<DrillOperation>().Any(d => d.Depth is null && Math.Abs(d.At.X - x) < near && Math.Abs(d.At.Y - y) < near);
            Assert.True(isPin || isOpening || expected.Exists(e => Math.Abs(e.X - x) < near && Math.Abs(e.Y - y) < near && Math.Abs(e.Depth - depth) < near), string.Create(CultureInfo.InvariantCulture, $"{program.Name}: bores at {x}, {y}, {depth} deep, which nothing asks for"));
        }

        // Once turned over the pins stand in the table: nothing comes near them below the safe height.
        if (program.IsSecond)
            foreach (var (pin, move) in program.Pins.SelectMany(p => moves.Where(m => m.Z < settings.SafeHeight - near).Select(m => (p, m))))
                Assert.True(pin.At.DistanceTo(new Point2(move.X, move.Y)) > pin.Diameter / 2 + program.Machine.Tools.Where(t => t.Kind == ToolKind.Cutter).Min(t => t.Diameter) / 2 - near);
        return expected.Count;

        // Of the panel as it lies: the inside counts from the finished corner; turned over on pins it keeps that, against stops it counts from its sawn edges.
        (double X, double Y) Place(double x, double y)
        {
            double Banded(string edge) => panel.GetProperty("bands").EnumerateArray().Where(b => b.GetProperty("edge").GetString() == panel.GetProperty("edges").GetProperty(edge).GetString())
                .Sum(b => b.GetProperty("thickness_mm").GetDouble() - b.GetProperty("pre_milled_mm").GetDouble());
            var isOnStops = program.IsSecond && program.Pins.IsEmpty;
            if (up == "inside") return isOnStops ? (x - Banded("start"), y - Banded("near")) : (x, y);
            return program.Machine.Flip == FlipAxis.Length
                ? (x - (isOnStops ? Banded("start") : 0), Of("width_mm") - y - (isOnStops ? Banded("far") : 0))
                : (Of("length_mm") - x - (isOnStops ? Banded("end") : 0), y - (isOnStops ? Banded("near") : 0));
        }
    }

    // The interpreter's own moves, in the program's unit; fails where it or the oracle finds fault.
    private static List<Move> Run(string text, string[] arguments, bool isSafe)
    {
        OutsideProgram.DemandPrograms("rs274");
        using var folder = new TemporaryFolder();
        File.WriteAllText(folder["program.ngc"], text);
        var result = OutsideProgram.Run(Path.Combine(OutsideProgram.RepositoryRoot, "tests", "oracles", "gcode_check.sh"), [folder["program.ngc"], .. arguments, .. isSafe ? ["--safe", "0"] : Array.Empty<string>(), "--moves"]);
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        var moves = new List<Move>();
        foreach (Match match in MoveLine().Matches(result.Errors))
        {
            var n = match.Groups[2].Value.Split(',').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray();
            moves.Add(match.Groups[1].Value == "ARC_FEED" ? new(n[0], n[1], n[5], n[2], n[3], false, true) : new(n[0], n[1], n[2], 0, 0, match.Groups[1].Value == "STRAIGHT_TRAVERSE", false));
        }

        return moves;
    }

    private static byte[] Bytes(Output output)
    {
        using var stream = new MemoryStream();
        output.Write(stream);
        return stream.ToArray();
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"X(-?[\d.]+) Y(-?[\d.]+)")]
    private static partial Regex Words();

    [GeneratedRegex(@"(STRAIGHT_TRAVERSE|STRAIGHT_FEED|ARC_FEED)\(([^)]*)\)")]
    private static partial Regex MoveLine();

    // Where a move ends; of an arc also its centre.
    private sealed record Move(double X, double Y, double Z, double Cx, double Cy, bool IsRapid, bool IsArc);
}
