using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Svg;

namespace ShopDrawings.Tests.Views;

/// <summary>The sheets of whole assemblies: what outside readers say of them, and that they say what the model says.</summary>
public class AssemblySheetsTests
{
    private static readonly string[] AlwaysThere = ["front", "side", "plan", "section-a", "section-b", "details", "isometric", "exploded"];

    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Sheets_use_their_paper_and_nothing_leaves_the_frame(string name)
    {
        foreach (var (sheet, drawing) in Sheets(name))
        {
            var page = drawing.Page!.Value;
            var frame = new Box2(new(20, 10), page - new Point2(10, 10));
            var drawn = drawing.Entities.Where(e => e.Layer.Name is not ("FRAME" or "TITLE_BLOCK" or "NOTES")).Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));

            Assert.All(drawing.Entities, e => Assert.True(Holds(frame, e.Bounds), $"{name} {sheet}: {e} leaves the frame"));
            // Of one direction at least half is used; scales go in steps of 2 and 2.5.
            var (across, up) = (drawn.Width / frame.Width, drawn.Height / (frame.Height - SheetFrame.TitleHeight));
            Assert.True(Math.Max(across, up) >= 0.5 && across * up >= 0.15, string.Create(CultureInfo.InvariantCulture, $"{name} {sheet} uses {across:0.00} by {up:0.00}"));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_dimension_says_what_it_measures(string name)
    {
        var design = Fixtures.Design(name);
        foreach (var (sheet, drawing) in Sheets(name))
        {
            var scale = Scale(drawing);
            var dimensions = drawing.Entities.OfType<LinearDimension>().ToList();

            Assert.All(dimensions, d => Assert.Equal((design.Drawings.Sheets.Lengths.Print(Math.Round(d.Measured * scale, 6)), scale), (d.Text, d.Factor)));
            // Each size once: no two of one view between the same ends.
            var frames = drawing.Entities.OfType<ContourEntity>().Where(c => c.Layer.Name == "DETAIL").Select(c => c.Bounds.Centre).ToList();
            Assert.Equal(dimensions.Count, dimensions.Select(d => (frames.Select((f, i) => (f.DistanceTo(d.From), i)).DefaultIfEmpty().Min().i, d.Upright, Math.Round(Math.Min(Along(d.From, d), Along(d.To, d)), 4), Math.Round(Math.Max(Along(d.From, d), Along(d.To, d)), 4))).Distinct().Count());
            if (sheet is "front" or "front-open" or "side" or "plan" or "section-a" or "section-b") Assert.NotEmpty(dimensions);
        }

        static double Along(Point2 p, LinearDimension d) => d.Upright ? p.Y : p.X;
    }

    // The cupboard as its file says: 600 × 720 × 300 of 18.1, a shelf whose top is at 380, a door with 1.5 around it.
    [Theory]
    [InlineData("front", "600", "720", "597", "717", "1.5")]
    [InlineData("front-open", "600", "720", "563.8", "380", "343.8", "321.9")]
    [InlineData("side", "300", "720", "2")]
    [InlineData("section-a", "300", "720", "203.4", "80")]
    [InlineData("section-b", "600", "300", "563.8")]
    public void Sizes_of_the_cupboard_are_on_their_sheets(string sheet, params string[] sizes)
    {
        var (_, drawing) = Sheets("wall-cupboard").Single(s => s.Name == sheet);

        Assert.Subset(drawing.Entities.OfType<LinearDimension>().Select(d => d.Text).ToHashSet(), sizes.ToHashSet());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Balloons_are_the_numbers_of_the_list(string name)
    {
        var design = Fixtures.Design(name);
        if (Sheets(name).Where(s => s.Name == "exploded").Select(s => s.Drawing).FirstOrDefault() is not { } drawing) return;
        var list = new PartsList(design.Assembly, design.Drawings.Sheets);
        var texts = drawing.Entities.OfType<TextEntity>().ToList();

        var balloons = texts.Where(t => t.Layer.Name == "BALLOON").Select(t => int.Parse(t.Text, CultureInfo.InvariantCulture)).Order();
        Assert.Equal(list.Rows.Where(r => r.Panels.Any(p => p.Placement is not null)).Select(r => r.Number), balloons);
        Assert.Equal(design.Assembly.Panels.Length, list.Rows.Sum(r => r.Panels.Length));
        // Equal panels share a row: so do their sizes.
        Assert.All(list.Rows, r => Assert.Single(r.Panels.Select(p => (p.Board.Name, Math.Round(p.Length.Value, 3), Math.Round(p.Width.Value, 3))).Distinct()));
        Assert.Subset(texts.Where(t => t.Layer.Name == "PARTS_LIST").Select(t => t.Text).ToHashSet(), list.Rows.Select(list.Sizes).ToHashSet());
        // No leader runs through the circle of another balloon.
        var circles = drawing.Entities.OfType<CircleEntity>().Where(c => c.Layer.Name == "BALLOON").ToList();
        Assert.All(drawing.Entities.OfType<LeaderEntity>(), l => Assert.Equal(1, circles.Count(c => new Segment(l.Points[0], l.Points[1]).DistanceTo(c.Centre) <= c.Radius + 1e-6)));
    }

    [Fact]
    public void Sheets_are_there_and_are_the_same_each_time()
    {
        foreach (string name in new[] { "seedling-cabinet", "tool-cart" })
        {
            var (first, second) = (Written(name), Written(name));

            Assert.Equal(first, second);
            Assert.Subset(first.Select(f => f.Name).ToHashSet(), AlwaysThere.ToHashSet());
        }

        Assert.Contains("front-open", Written("seedling-cabinet").Select(f => f.Name));
        Assert.DoesNotContain("front-open", Written("tool-cart").Select(f => f.Name));
    }

    [Fact]
    public void Details_show_the_corners_with_what_stands_in_grooves()
    {
        var sheets = Sheets("wall-cupboard").ToDictionary(s => s.Name, s => s.Drawing);
        var texts = sheets["details"].Entities.OfType<LinearDimension>().Select(d => d.Text).ToHashSet();

        // The back, 6.3 thick, stands 7 deep in top and bottom; doors stand 2 before the carcass and 1.5 inside its outline.
        Assert.Subset(texts, new HashSet<string> { "6.3", "7", "2", "1.5" });
        string[] Letters(string sheet) => [.. sheets[sheet].Entities.OfType<TextEntity>().Where(t => t.Layer.Name == "MARKS").Select(t => t.Text[..1]).Order(StringComparer.Ordinal)];
        Assert.Equal(["C", "D", "E", "F"], Letters("section-a"));
        Assert.Equal(["C", "D", "E", "F"], Letters("details"));
        Assert.Equal(["A", "A", "B", "B"], Letters("front"));
    }

    [Fact]
    public void Sections_hatch_what_they_cut_and_show_the_screws_in_their_plane()
    {
        var (_, drawing) = Sheets("tool-cart").Single(s => s.Name == "section-a");

        // Cut in the middle: bottom, floor, top, back, applied top, and of four drawers front, box front, box back and bottom each.
        Assert.Equal(5 + 4 * 4, drawing.Entities.OfType<HatchEntity>().Count());
        Assert.Contains(drawing.Entities, e => e.Layer.Role == Role.Centre);
        Assert.Contains(drawing.Entities, e => e.Layer.Role == Role.Bore);
    }

    [Fact]
    public void A_sheet_as_DXF_is_sound_and_has_its_line_types()
    {
        OutsideProgram.DemandPython("ezdxf shapely");
        using var folder = new TemporaryFolder();
        var path = folder["plan.dxf"];
        var plan = Sheets("home-lab").Single(s => s.Name == "plan").Drawing;
        using (var file = File.Create(path)) new DxfExporter().Write(plan, file);

        var result = OutsideProgram.RunOracle("dxf_audit.py", "ezdxf shapely", path);

        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
        Assert.Contains("\nPHANTOM\n", File.ReadAllText(path).Replace("\r", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Motions_are_phantom_lines()
    {
        Assert.Contains(Sheets("home-lab").Single(s => s.Name == "plan").Drawing.Entities, e => e is SegmentEntity { Segment.IsLine: false } && e.Layer.Role == Role.Phantom);
        Assert.Contains(Sheets("tool-cart").Single(s => s.Name == "side").Drawing.Entities, e => e.Layer.Role == Role.Phantom);
        Assert.Equal(LinePattern.DoubleDotChain, Style.Standard.For(Role.Phantom).Pattern);
    }

    private static System.Collections.Immutable.ImmutableArray<(string Name, Drawing Drawing)> Sheets(string name)
    {
        var design = Fixtures.Design(name);
        return AssemblySheets.Of(design.Assembly, design.Drawings.Sheets);
    }

    private static List<(string Name, string Svg)> Written(string name) => [.. Sheets(name).Select(s =>
    {
        using var stream = new MemoryStream();
        new SvgExporter().Write(s.Drawing, stream);
        return (s.Name, System.Text.Encoding.UTF8.GetString(stream.ToArray()));
    })];

    private static int Scale(Drawing drawing) =>
        int.Parse(drawing.Entities.OfType<TextEntity>().Single(t => t.Layer.Name == "TITLE_BLOCK" && t.Text.StartsWith("1:", StringComparison.Ordinal)).Text[2..], CultureInfo.InvariantCulture);

    private static bool Holds(Box2 frame, Box2 box) => box.Min.X >= frame.Min.X - 1e-6 && box.Min.Y >= frame.Min.Y - 1e-6 && box.Max.X <= frame.Max.X + 1e-6 && box.Max.Y <= frame.Max.Y + 1e-6;
}
