using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Drafting;

/// <summary>What panel sheets look like: paper, scale, rows at one pitch, grain, and lines that stay clear of holes. What they say is tested by <see cref="SheetRebuildTests"/>.</summary>
public class PanelSheetTests
{
    public static TheoryData<string> Names => Fixtures.Names;

    [Fact]
    public void Crowded_panel_stands_on_one_sheet_of_the_smallest_paper_with_its_rows_by_pitch()
    {
        var sheets = Sheets("loom-bench").Where(s => s.Path.StartsWith("panels/jig-plate", StringComparison.Ordinal)).ToList();

        var drawing = Assert.Single(sheets).Drawing;
        Assert.Equal((297.0, 210.0), (drawing.Page!.Value.X, drawing.Page!.Value.Y));
        Assert.Contains("drawn 1:5", drawing.Description, StringComparison.Ordinal);
        Assert.Equal(["10 × 48 (= 480)", "5 × 32 (= 160)"], Pitches(drawing).Select(p => p.Text).Order(StringComparer.Ordinal));
        // Each of six kinds of bores and both openings has its letter in the view.
        Assert.Equal("ABCDEFGH", string.Concat(drawing.Entities.OfType<TextEntity>().Where(t => t.Layer.Name == "TEXT" && t.Text.Length == 1 && char.IsAsciiLetterUpper(t.Text[0])).Select(t => t.Text).Distinct().Order(StringComparer.Ordinal)));
    }

    [Fact]
    public void Long_panel_is_drawn_in_two_pieces_that_meet_at_a_place_on_both_scales()
    {
        var drawing = Sheets("loom-bench").Single(s => s.Path == "panels/long-shelf").Drawing;

        Assert.Contains("drawn 1:5", drawing.Description, StringComparison.Ordinal);
        Assert.Equal(420, drawing.Page!.Value.X);
        Assert.Equal(2, drawing.Entities.Count(e => e.Layer.Name == "MATCH"));
        Assert.Equal(2, drawing.Entities.OfType<TextEntity>().Count(t => t is { Layer.Name: "TEXT", Text: "1200" }));
        Assert.Single(drawing.Entities.OfType<TextEntity>(), t => t is { Layer.Name: "TEXT", Text: "2400" });
        // 36 bores and two openings are drawn once, whichever piece they are in; those in the outside face are four arcs each.
        Assert.Equal(24, drawing.Entities.OfType<CircleEntity>().Count(c => c.Layer.Name == "BORE"));
        Assert.Equal(12 * 4, drawing.Entities.OfType<SegmentEntity>().Count(s => s.Layer.Name == "HIDDEN"));
    }

    [Fact]
    public void Row_is_not_broken_though_the_panel_is_long()
    {
        var drawing = Sheets("loom-bench").Single(s => s.Path == "panels/hook-rail").Drawing;

        Assert.DoesNotContain(drawing.Entities, e => e.Layer.Name == "MATCH");
        Assert.Equal("19 × 80 (= 1520)", Assert.Single(Pitches(drawing)).Text);
    }

    [Fact]
    public void Small_panel_is_enlarged()
    {
        var drawing = Sheets("loom-bench").Single(s => s.Path == "panels/switch-cover").Drawing;

        Assert.Equal((297.0, 210.0), (drawing.Page!.Value.X, drawing.Page!.Value.Y));
        Assert.Contains(drawing.Entities.OfType<TextEntity>(), t => t is { Layer.Name: "TITLE_BLOCK", Text: "2:1" });
        var outline = drawing.Entities.OfType<ContourEntity>().Single(c => c.Layer.Name == "OUTLINE").Bounds;
        Assert.Equal((120.0, 80.0), (outline.Width, outline.Height));
    }

    [Theory]
    [InlineData("mm", "A")]
    [InlineData("in", "")]
    public void Row_gets_a_pitch_only_where_it_is_printed_exactly(string unit, string expected)
    {
        // 37 mm is no fraction of an inch.
        var bores = string.Join(", ", Enumerable.Range(0, 6).Select(i => string.Create(CultureInfo.InvariantCulture, $"{{at: [{50 + 37 * i} mm, 100 mm], diameter: 5 mm}}")));
        var design = Fixtures.DesignOf($"project: p\nunit: {unit}\nboards: {{b: {{kind: melamine, thickness: 18 mm}}}}\npanels:\n  a: {{board: b, length: 400 mm, width: 200 mm, bores: [{bores}]}}\n");

        var drawing = Shop.Draw(design, []).Drawings.Single(d => d.Path == "panels/a").Drawing;

        Assert.Equal(expected.Length, Pitches(drawing).Count(p => p.Text == "5 × 37 (= 185)"));
        Assert.Equal(expected.Length, Pitches(drawing).Count());
    }

    [Fact]
    public void Places_between_the_ends_of_a_row_leave_a_crowded_scale_alone()
    {
        // 10 mm apart at 1:5 numbers of 2.5 mm find no room.
        var bores = string.Join(", ", Enumerable.Range(0, 41).Select(i => string.Create(CultureInfo.InvariantCulture, $"{{at: [{150 + 10 * i}, 100], diameter: 4}}")));
        var design = Fixtures.DesignOf($"project: p\nboards: {{b: {{kind: melamine, thickness: 18}}}}\npanels:\n  a: {{board: b, length: 700, width: 300, bores: [{bores}, {{at: [200, 200], diameter: 6}}]}}\n");

        var drawing = Shop.Draw(design, []).Drawings.Single(d => d.Path == "panels/a").Drawing;

        Assert.Equal("40 × 10 (= 400)", Assert.Single(Pitches(drawing)).Text);
        Assert.Equal(["150", "200", "550"], drawing.Entities.OfType<TextEntity>().Where(t => t is { Layer.Name: "TEXT", AngleDegrees: 90 } && char.IsAsciiDigit(t.Text[0])).OrderBy(t => t.Position.X).Select(t => t.Text));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Lines_of_dimensions_stay_clear_of_holes_and_grain_is_shown_once(string name)
    {
        var design = Fixtures.Design(name);
        var grained = design.Assembly.Panels.ToDictionary(p => p.Id, p => p.Board.HasGrain);
        foreach (var (path, drawing) in Sheets(name))
        {
            var circles = drawing.Entities.OfType<CircleEntity>().Where(c => c.Layer.Name == "BORE").ToList();
            foreach (var line in drawing.Entities.OfType<Dimension>().SelectMany(DimensionGraphics.Of).OfType<SegmentEntity>())
                Assert.All(circles, c => Assert.True(line.Segment.DistanceTo(c.Centre) > c.Radius, $"{name}, {path}: a dimension runs through the hole at {c.Centre}"));
            if (!grained.TryGetValue(path["panels/".Length..], out var hasGrain)) continue;
            Assert.Equal(hasGrain ? 2 : 0, drawing.Entities.OfType<ArrowEntity>().Count(a => a.Layer.Name == "GRAIN"));
        }
    }

    private static IEnumerable<LinearDimension> Pitches(Drawing drawing) => drawing.Entities.OfType<LinearDimension>().Where(d => d.Text.Contains(" × ", StringComparison.Ordinal));

    private static IEnumerable<(string Path, Drawing Drawing)> Sheets(string name) =>
        Shop.Draw(Fixtures.Design(name), []).Drawings.Where(d => d.Path.StartsWith("panels/", StringComparison.Ordinal)).Select(d => (d.Path, d.Drawing));
}
