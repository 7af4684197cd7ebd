using System.Collections.Immutable;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Checks;

namespace ShopDrawings.Tests.Templates;

public class TemplateSetTests
{
    private const string Boards = "project: p\nboards: {main: {kind: melamine, thickness: 18}, thin: {kind: hardboard, thickness: 6}}\n";

    [Fact]
    public void Every_hole_drilled_by_hand_is_on_one_template_place_or_on_a_stick()
    {
        var (onPaper, onSticks, shared) = (0, 0, 0);
        Gen.Int[0, 1_000_000_000].Sample(seed =>
        {
            var design = Fixtures.DesignOf(new RandomProject(seed).Text + "methods: {faces: marked}\n");
            var set = TemplateSet.Of(design.Assembly, TemplateChoice.Marked, []);
            foreach (var panel in design.Assembly.Panels)
            {
                var found = set.All.SelectMany(t => t.Places).Where(p => p.Panel == panel).SelectMany(p => p.Bores).Concat(set.OnSticks.Where(s => s.Panel == panel).Select(s => s.Bore));
                Assert.Equal(Sorted(panel.Features.OfType<Bore>().Where(b => b.Method == BoreMethod.Marked)), Sorted(found));
            }

            foreach (var template in set.All)
                foreach (var place in template.Places)
                {
                    // A template laid on a place shows each of its holes, with its bit and depth.
                    var laid = place.Bores.Select(b => new TemplateHole(place.Turn.Of(TemplatePlace.View(place.Face, b.At.Point)) - place.Offset, b.Diameter.Value, b.Depth?.Value, b.Use == BoreUse.Countersink)).ToList();
                    Assert.Equal(template.Pattern.Holes.Length, laid.Count);
                    Assert.All(template.Pattern.Holes, h => Assert.Contains(laid, l => l.At.DistanceTo(h.At) < 1e-6 && l.Diameter == h.Diameter && l.Depth == h.Depth && l.IsSunk == h.IsSunk));
                    Assert.InRange(template.Pattern.Bounds.Width, 0, TemplateSet.Largest + 1e-6);
                    Assert.All(template.Edges, e => Assert.Contains(place.Edges, own => own.Line.Key == e.Key));
                }

            onPaper += set.All.Length;
            onSticks += set.OnSticks.Length;
            shared += set.All.Count(t => t.Places.Length > 2);
        }, iter: 40, threads: 1);

        Assert.True(onPaper > 40 && onSticks > 40 && shared > 20, $"{onPaper} {onSticks} {shared}");
    }

    [Fact]
    public void Words_touch_no_words_and_every_hole_has_its_own()
    {
        Gen.Int[0, 1_000_000_000].Sample(seed =>
        {
            var design = Fixtures.DesignOf(new RandomProject(seed).Text + "methods: {faces: marked}\n");
            foreach (var template in TemplateSet.Of(design.Assembly, TemplateChoice.Marked, []).All)
                foreach (var page in TemplatePages.Of(template, "p", design.Templates, design.Drawings.Sheets))
                {
                    var boxes = page.Entities.OfType<TextEntity>().Select(t => (t.Text, t.Bounds)).ToList();
                    for (var i = 0; i < boxes.Count; i++)
                        for (var j = i + 1; j < boxes.Count; j++)
                        {
                            // Ascenders of one line may reach into the descenders' share of the line above.
                            var (a, b) = (boxes[i].Bounds.Grown(-0.3), boxes[j].Bounds.Grown(-0.3));
                            Assert.False(a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y, $"{template.Name}: “{boxes[i].Text}” on “{boxes[j].Text}”\n{new RandomProject(seed).Text}");
                        }

                    Assert.All(boxes, t => Assert.True(t.Bounds.Min.X > 5 && t.Bounds.Max.X < page.Page!.Value.X - 5 && t.Bounds.Min.Y > 3 && t.Bounds.Max.Y < page.Page.Value.Y - 3, t.Text));
                    var crosses = page.Entities.OfType<CircleEntity>().Where(c => c.Layer == PageCanvas.Hole).Select(c => $"{c.Centre.X:0.00} {c.Centre.Y:0.00}").Distinct().Count();
                    var named = boxes.Count(t => t.Text.Contains('⌀', StringComparison.Ordinal) && !t.Text.Contains('×', StringComparison.Ordinal));
                    Assert.True(named >= crosses, $"{page.Title}: {named} words for {crosses} holes\n{new RandomProject(seed).Text}");
                }
        }, iter: 15, threads: 1);
    }

    [Fact]
    public void Machined_holes_get_templates_only_where_all_do()
    {
        var machined = Fixtures.Design("wall-cupboard");

        Assert.Empty(TemplateSet.Of(machined.Assembly, TemplateChoice.Marked, []).All);
        Assert.NotEmpty(TemplateSet.Of(machined.Assembly, TemplateChoice.All, []).All);
        Assert.Empty(TemplateSet.Of(machined.Assembly, TemplateChoice.None, []).OnSticks);
    }

    [Fact]
    public void Hinge_plates_left_and_right_are_one_template_that_keeps_both_edges()
    {
        var plates = Assert.Single(TemplateSet.Of(Fixtures.Design("hand-drilled-cupboard").Assembly, TemplateChoice.Marked, []).All, t => t.Name == "cup-35-plate");

        Assert.Equal(4, plates.Places.Length);
        Assert.Equal([37, 85.5], plates.Edges.Select(e => Math.Round(e.Distance, 6)).Order());
        Assert.Equal(2, plates.Places.Count(p => p.Turn.IsMirrored));
    }

    [Theory]
    [InlineData(300, 1, 0)]
    [InlineData(300.1, 0, 4)]
    public void Patterns_over_300_mm_go_to_the_sticks(double apart, int templates, int onSticks)
    {
        var bores = string.Join(", ", new[] { "[-1, 0]", "[1, 0]", "[1, 20]", "[-1, 20]" }.Select(at => $"{{at: {at.Replace("1", (apart / 2).ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal)}, diameter: 4, depth: 10}}"));
        var design = Fixtures.DesignOf(Boards + $"hardware: {{rail: {{length: 320, width: 40, height: 10, bores: [{bores}]}}}}\npanels: {{p: {{board: main, length: 600, width: 400}}}}\n"
            + "fittings: {rail-1: {hardware: rail, panel: p, at: [300, 200]}}\nmethods: {faces: marked}\n");

        var set = TemplateSet.Of(design.Assembly, TemplateChoice.Marked, []);

        Assert.Equal((templates, onSticks), (set.All.Length, set.OnSticks.Length));
    }

    [Fact]
    public void Withheld_panels_get_none()
    {
        var assembly = Fixtures.Design("hand-drilled-cupboard").Assembly;

        Assert.DoesNotContain(TemplateSet.Of(assembly, TemplateChoice.Marked, ["left-side"]).All.SelectMany(t => t.Places), p => p.Panel.Id == "left-side");
    }

    private static ImmutableArray<string> Sorted(IEnumerable<Bore> bores) => [.. bores.Select(b => $"{b.Surface} {Text(b.At.Point, b.Diameter.Value, b.Depth?.Value)} {b.Origin}").Order(StringComparer.Ordinal)];

    private static string Text(Point2 at, double diameter, double? depth) => FormattableString.Invariant($"{Zero(at.X):0.0000} {Zero(at.Y):0.0000} {diameter:0.00} {depth:0.00}");

    private static double Zero(double value) => Math.Round(value, 4) + 0.0;
}
