using System.Collections.Immutable;
using System.Text.Json;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Dxf;

namespace ShopDrawings.Tests.Machining;

/// <summary>Panels and sheets of every fixture for every shipped machine and the fixture's own, judged by readers that are not ours.</summary>
public class MachineFileTests
{
    // Every value of two settings meets: release, unit, pieces, chords. The programs of a machine take turns, so that each of the six ways is used.
    private static readonly ImmutableArray<DxfExporter> Ways =
    [
        new() { Release = DxfRelease.R12 },
        new() { Release = DxfRelease.R12, Unit = DrawingUnit.Inch, Outlines = DxfOutlines.Pieces, ChordTolerance = 0.05 },
        new() { Release = DxfRelease.R2000, Outlines = DxfOutlines.Pieces },
        new() { Release = DxfRelease.R2000, Unit = DrawingUnit.Inch, ChordTolerance = 0.05 },
        new() { Release = DxfRelease.R2010, ChordTolerance = 0.05 },
        new() { Release = DxfRelease.R2010, Unit = DrawingUnit.Inch, Outlines = DxfOutlines.Pieces },
    ];

    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_file_is_sound_for_its_machine(string fixture)
    {
        var (machine, drawing) = (new List<string>(), new List<string>());
        using var folder = new TemporaryFolder();
        foreach (var (profile, programs) in Machined(fixture))
        {
            var turns = Math.Min(programs.Length, Ways.Length);
            for (var i = 0; i < programs.Length; i++)
            {
                for (var way = i % turns; way < Ways.Length; way += turns)
                {
                    var exporter = Ways[way];
                    var isDrawing = profile.Machine.Kind == MachineKind.Drawing;
                    var path = folder[$"{profile.Machine.Name}-{programs[i].Name.Replace('/', '-')}-{way}.dxf"];
                    File.WriteAllBytes(path, MachineFiles.Write(Written(programs[i], exporter), profile.Drawing with { IsInches = exporter.Unit == DrawingUnit.Inch }, exporter));
                    (isDrawing ? drawing : machine).Add(path);
                }
            }
        }

        Audit(machine, "--machine");
        Audit(drawing);
    }

    [Fact]
    public void Files_of_any_panel_are_sound()
    {
        OutsideProgram.DemandPython("ezdxf shapely");
        Machine[] machines =
        [
            .. Machines.Shipped.Select(p => p.Machine).Where(m => m.Kind != MachineKind.Drawing),
            // The edge is judged: the way into a freed corner of an outline and back is one line by intent, which the audit of closed outlines refuses.
            Machines.Milling(6, 3) with { Paths = CutLines.Finished, Corners = InnerCorners.Relieved, NameHeight = 8, Flip = FlipAxis.Width, Pins = new LocatingPins(8, 25), Tools = [new(ToolKind.Cutter, 6), new(ToolKind.Cutter, 3), new(ToolKind.Engraver, 1)] },
        ];
        RandomPanels.Any.Array[20].Sample(panels =>
        {
            using var folder = new TemporaryFolder();
            var paths = new List<string>();
            foreach (var program in panels.SelectMany((panel, i) => Machines.PlanOf(panel, machines[i % machines.Length]).Programs))
            {
                var way = paths.Count % Ways.Length;
                paths.Add(folder[$"{paths.Count}-{way}.dxf"]);
                File.WriteAllBytes(paths[^1], MachineFiles.Write(Written(program, Ways[way]), new MachineDrawingSettings { ScaleSquare = 50 }, Ways[way]));
            }

            Audit(paths, "--machine");
        }, iter: Fuzz.Iterations(2), threads: 1);
    }

    // 1200 × 700 mm fit into an A4 sheet of 297 × 210 mm at 1:5, not at 1:2.
    [Fact]
    public void Sheet_of_paper_is_a_layout_beside_the_model()
    {
        OutsideProgram.DemandPython("ezdxf");
        var design = Fixtures.DesignOf("""
            project: p
            machine-files: [plain, papered]
            machines: {plain: {like: router}, papered: {like: router, paper: A4}}
            boards: {ply: {kind: plywood, thickness: 18}}
            panels: {side: {board: ply, length: 1200, width: 700}}
            """);
        var (plain, papered) = (design.Machining[0], design.Machining[1]);
        var drawing = MachineDrawing.Of(papered.Plan.Programs.Single(), papered.Profile.Drawing);
        var exporter = papered.Profile.For(drawing, "Side", "router");

        Assert.Null(plain.Profile.For(drawing, "Side").Layout);
        Assert.Equal((297, 210, 5), (exporter.Layout!.Width, exporter.Layout.Height, exporter.Layout.Scale));
        byte[] Of(DxfExporter e)
        {
            using var stream = new MemoryStream();
            e.Write(drawing, stream);
            return stream.ToArray();
        }

        var files = DxfFiles.Read([Of(exporter), Of(plain.Profile.Dxf)]);
        Assert.Equal(["Side", "router", "1:5"], files[0].Paper.Where(e => e.Type == "TEXT").Select(e => e.Text));
        Assert.Empty(files[1].Paper);
        // The model is the same.
        Assert.Equal(files[1].Entities.Select(e => (e.Type, e.Layer)), files[0].Entities.Select(e => (e.Type, e.Layer)));
    }

    [Fact]
    public void File_in_inches_is_the_file_in_millimetres()
    {
        var programs = Fixtures.Names.SelectMany(name => Machined(name.Data).Select(m => (m.Profile, Program: m.Programs[0]))).ToList();
        var read = DxfFiles.Read([.. programs.SelectMany(p => new[] { DrawingUnit.Millimetre, DrawingUnit.Inch }.Select(unit => MachineFiles.Write(p.Program, p.Profile.Drawing, new DxfExporter { Unit = unit })))]);

        for (var i = 0; i < programs.Count; i++)
        {
            var (mm, inches) = (read[2 * i], read[2 * i + 1]);
            Assert.Equal((4, 1), (mm.Units, inches.Units));
            var (a, b) = (MachineFiles.Lines(mm), MachineFiles.Lines(inches));
            Assert.NotEmpty(a);
            Assert.Equal(a.Select(l => (l.Layer, l.Type, l.IsClosed, l.Segments.Count)), b.Select(l => (l.Layer, l.Type, l.IsClosed, l.Segments.Count)));
            Assert.All(a.Zip(b), pair => Assert.All(pair.First.Segments.Zip(pair.Second.Segments), s => Assert.True(
                s.First.Start.DistanceTo(s.Second.Start) < 1e-4 && s.First.End.DistanceTo(s.Second.End) < 1e-4 && s.First.Middle.DistanceTo(s.Second.Middle) < 1e-4, $"{programs[i].Program.Name}: {s}")));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_read_is_what_the_machine_is_to_do(string fixture)
    {
        var written = Machined(fixture).SelectMany(m => m.Programs.Select(p => MachineDrawing.Of(p, m.Profile.Drawing))).ToList();
        var read = DxfFiles.Read([.. written.Select((d, i) => DxfFiles.Write(d, (DxfRelease)(i % 3), i % 2 == 0 ? DrawingUnit.Millimetre : DrawingUnit.Inch))]);

        foreach (var (drawing, file) in written.Zip(read))
        {
            var lines = MachineFiles.Lines(file);
            var expected = drawing.Entities.Where(e => e is not (TextEntity or Dimension)).ToList();
            Assert.Equal(expected.Select(e => e.Layer.Name), lines.Select(l => l.Layer));
            foreach (var (entity, line) in expected.Zip(lines))
            {
                var (segments, isClosed) = entity switch
                {
                    CircleEntity c => (Contour.Circle(c.Centre, c.Radius).Segments, true),
                    ContourEntity c => (c.Contour.Segments, true),
                    PathEntity p => (p.Path.Segments, p.Path.IsClosed),
                    SegmentEntity s => ([s.Segment], false),
                    _ => throw new InvalidOperationException(entity.ToString()),
                };
                DxfReadBackTests.AssertSamePath(segments, [.. line.Segments]);
                Assert.Equal(isClosed, line.IsClosed);
                Assert.Equal(entity is CircleEntity or ContourEntity { Contour.AsCircle: not null }, line.Type == "CIRCLE");
            }
        }
    }

    private static void Audit(List<string> files, params string[] kind)
    {
        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", [.. files, .. kind, "--summary", "--cut-if", "OUTLINE*", "--cut-if", "OUT_*", "--cut-if", "CUT*"]);
        using var report = JsonDocument.Parse(result.Output);
        foreach (var file in files.Count == 1 ? [report.RootElement] : report.RootElement.EnumerateArray().ToArray())
        {
            var isAsMeant = file.GetProperty("warnings").EnumerateArray().All(w => w.GetProperty("code").GetString() == "coincident") && file.GetProperty("coincident_on_other_layers").EnumerateArray().All(c => kind.Length == 0 ? IsUnbanded(c) : IsBetweenTabs(c));
            Assert.True(file.GetProperty("ok").GetBoolean() && isAsMeant, $"{file.GetProperty("file")} {file.GetProperty("failures")} {file.GetProperty("warnings")} {file.GetProperty("coincident_on_other_layers")}");
            // Of a text a reader knows no box.
            if (kind.Length == 0) continue;
            // The box is that of the arcs; their chords may stay that far within it.
            var way = Ways[file.GetProperty("file").GetString()![^"0.dxf".Length] - '0'];
            var allowed = 0.0001 + (way.ChordTolerance ?? 0) / (way.Unit == DrawingUnit.Inch ? 25.4 : 1);
            foreach (var corner in new[] { "min", "max" })
                foreach (var (said, found) in file.GetProperty("header_extents").GetProperty(corner).EnumerateArray().Zip(file.GetProperty("extents").GetProperty(corner).EnumerateArray()))
                    Assert.Equal(said.GetDouble(), found.GetDouble(), allowed);
        }
    }

    // In pieces the way into a freed corner and back would be two lines in one place, which projects are refused; then corners stay round.
    private static FaceProgram Written(FaceProgram program, DxfExporter exporter)
    {
        if (program.Machine is not { Paths: CutLines.ToolCentre, Corners: not InnerCorners.Round } machine || exporter.Outlines != DxfOutlines.Pieces) return program;
        return MachiningPlanner.Plan(program.Sheet is null ? [program.Panels.Single().Panel] : [], program.Sheet is { } sheet ? [sheet] : [], machine with { Corners = InnerCorners.Round }, LengthStyle.Millimetres).Programs.Single(p => p.Name == program.Name);
    }

    // Over the cut at the depth of the tabs goes that through between them; and a tab may be as long as the side it is on.
    private static bool IsBetweenTabs(JsonElement coincident) =>
        coincident.GetProperty("layers").EnumerateArray().Select(l => l.GetString()!).Order(StringComparer.Ordinal).ToList() is [var a, var b]
        && ((a is "CUTOUT" or "OUTLINE" && b.StartsWith("TAB_DEEP_", StringComparison.Ordinal))
            || (a.StartsWith("BETWEEN_TABS_", StringComparison.Ordinal) && (b.StartsWith("OUTLINE_PATH_", StringComparison.Ordinal) || b.StartsWith("CUTOUT_PATH_", StringComparison.Ordinal)) && b.Contains("_DEEP_", StringComparison.Ordinal))
            || ((a.StartsWith("OUT", StringComparison.Ordinal) || a.StartsWith("CUT", StringComparison.Ordinal)) && a.Contains("_DEEP_", StringComparison.Ordinal) && b.StartsWith('T') && b.EndsWith("_THRU", StringComparison.Ordinal)));

    // Where a panel gets no band, its sawn and its finished edge are one line.
    private static bool IsUnbanded(JsonElement coincident) =>
        coincident.GetProperty("type").GetString() == "LINE" && coincident.GetProperty("layers").EnumerateArray().Select(l => l.GetString()).Order(StringComparer.Ordinal).SequenceEqual(["OUTLINE", "REFERENCE"]);

    private static IEnumerable<(MachineProfile Profile, ImmutableArray<FaceProgram> Programs)> Machined(string fixture)
    {
        var design = Fixtures.Design(fixture);
        var sheets = design.Machining.SelectMany(m => m.Plan.Programs).Select(p => p.Sheet).OfType<CutSheet>().DistinctBy(s => s.Id).ToList();
        return Machines.Shipped.Concat(design.Machining.Select(m => m.Profile)).DistinctBy(p => p.Machine.Name)
            .Select(p => (p, Spread(MachiningPlanner.Plan(design.Assembly.Panels, sheets, p.Machine, design.Lengths).Programs)));

        // Enough that each of the six ways is used twice; the first and the last, which is a sheet's where there is one, among them.
        static ImmutableArray<FaceProgram> Spread(ImmutableArray<FaceProgram> programs)
        {
            const int Most = 12;
            return programs.Length <= Most ? programs : [.. Enumerable.Range(0, Most).Select(k => programs[k * (programs.Length - 1) / (Most - 1)])];
        }
    }
}
