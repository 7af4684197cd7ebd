using System.Globalization;
using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Checks;

namespace ShopDrawings.Tests.Guides;

/// <summary>Drill guides of cabinets written at random, for lasers and routers with beds of any size.</summary>
public class GuideTests
{
    private const double Agreement = 1e-6;

    private static readonly string[] Beds = ["none", "[300, 200]", "[200, 300]", "[420, 297]", "[600, 400]", "[250, 250]"];
    private static readonly string[] Bushes = ["[]", "[{bit: 5, outside: 10}, {bit: 4, outside: 8}, {bit: 4.5, outside: 8}]", "[{bit: 35, outside: 40}, {bit: 3, outside: 6}]"];

    // A router's cutters are 6 and 3 mm; a laser's kerf is 0.2 mm.
    private static Design Random(int seed) => Fixtures.DesignOf(new RandomProject(seed).Text
        + $"methods: {{faces: marked}}\ndrawings: {{standard: {(seed % 5 < 3 ? "iso" : "asme")}, lengths: {(seed % 3 == 0 ? "in" : "mm")}}}\nmachines: {{cutter: {{like: {(seed % 2 == 0 ? "laser" : "router")}, bed: {Beds[seed / 2 % Beds.Length]}}}}}\n"
        + $"guides: {{board: sheet, machine: cutter, bushes: {Bushes[seed / 12 % Bushes.Length]}}}\n");

    [Fact]
    public void Guides_of_any_cabinet_lead_bits_to_bores_fit_together_and_can_be_cut()
    {
        var (places, mirrored, fences, joined) = (0, 0, 0, 0);
        Gen.Int[0, 1_000_000_000].Sample(seed =>
        {
            var design = Random(seed);
            var job = design.Guides!;
            foreach (var guide in job.All)
            {
                LeadsEveryBitToItsBore(guide);
                FencesFit(guide);
                PiecesAreThePlate(guide, job);
                CanBeCut(guide, job);
                WordsAreFree(guide);
                WordsAreEngraved(guide, job);
                SheetIsReadable(guide, job, design);
                places += guide.Template.Places.Length;
                mirrored += guide.Template.Places.Count(p => p.Turn.IsMirrored);
                fences += guide.Fences.Length;
                joined += guide.Pieces.Count() > 1 ? 1 : 0;
            }
        }, iter: Fuzz.Iterations(14), threads: 1);

        Assert.True(places > 150 && mirrored > 0 && fences > 80 && joined > 10, $"{places} places, {mirrored} mirrored, {fences} fences, {joined} joined");
    }

    private static void LeadsEveryBitToItsBore(Guide guide)
    {
        foreach (var place in guide.Template.Places)
        {
            // From the panel's frame: as somebody sees the face, turned to lie as the template does, then as the plate does.
            Point2 OnPlate(Point2 p) => guide.Lie.Of(place.Turn.Of(TemplatePlace.View(place.Face, p)) - place.Offset);
            var centres = place.Bores.Where(b => b.Use != BoreUse.Countersink).GroupBy(b => (Math.Round(b.At.X.Value, 4), Math.Round(b.At.Y.Value, 4))).Select(g => (At: OnPlate(g.First().At.Point), Bit: g.Min(b => b.Diameter.Value))).ToList();
            Assert.Equal(centres.Count, guide.Holes.Length);
            foreach (var hole in guide.Holes)
            {
                var (_, bit) = Assert.Single(centres, c => c.At.DistanceTo(hole.At) < Agreement);
                Assert.Equal(bit, hole.Bit, 9);
                Assert.Equal(hole.Bush?.Outside ?? bit + 0.1, hole.Diameter, 9);
            }

            // The plane of each fence is that edge of the panel.
            foreach (var (fence, edge) in guide.Fences.Select(f => f.Edge).Distinct().Zip(guide.FencedEdges(place)))
                foreach (var corner in CornersOf(place.Panel, edge).Select(OnPlate)) Assert.Equal(fence.At, fence.IsUpright ? corner.X : corner.Y, 6);
        }
    }

    private static void FencesFit(Guide guide)
    {
        var board = guide.Plate.Thickness.Value;
        foreach (var fence in guide.Fences)
        {
            Assert.Equal(fence.Tabs.Length, fence.Slots.Length);
            foreach (var (tab, slot) in fence.Tabs.Zip(fence.Slots))
            {
                var (inner, outer) = fence.Edge.Towards.X + fence.Edge.Towards.Y > 0 ? (slot.Min, slot.Max) : (slot.Max, slot.Min);
                Assert.Equal(fence.Edge.At, fence.Edge.IsUpright ? inner.X : inner.Y, 9);
                Assert.Equal(board + 0.2, Math.Abs((fence.Edge.IsUpright ? outer.X : outer.Y) - fence.Edge.At), 9);
                var (from, to) = fence.Edge.IsUpright ? (slot.Min.Y, slot.Max.Y) : (slot.Min.X, slot.Max.X);
                Assert.True(from < tab.From && to > tab.To, "a tab is longer than its slot");
                // The tab reaches the plate's upper face, and nothing of the fence beside it does.
                Assert.True(fence.Panel.Outline.Contains(new((tab.From + tab.To) / 2 - fence.From, fence.Panel.Width.Value)));
                Assert.False(fence.Panel.Outline.Contains(new(tab.To + 0.5 - fence.From, fence.Panel.Width.Value - 0.1)));
                Assert.All(guide.Holes, h => Assert.True(Away(slot, h.At) >= h.Diameter / 2 + 3.9, $"{guide.Name}: slot {slot} beside hole {h.Number}"));
            }

            Assert.Equal(guide.Stand + board, fence.Panel.Width.Value, 9);
            Assert.All(guide.Template.Places, p => Assert.True(guide.Stand < p.Panel.Thickness.Value));
            Assert.All(guide.Fences.Where(f => f != fence && f.Edge == fence.Edge), f => Assert.True(f.From >= fence.To || f.To <= fence.From));
        }
    }

    private static void PiecesAreThePlate(Guide guide, GuideJob job)
    {
        var machine = job.Settings.Machine;
        var pieces = guide.Pieces.Select(p => (p.Panel, Outline: p.Panel.Outline.Moved(p.Corner!.Value))).ToList();
        Assert.All(guide.Parts, p => Assert.True(machine.Holds(p.Panel.Length.Value, p.Panel.Width.Value), $"{p.Panel.Id} is larger than the bed"));
        Assert.InRange(guide.Plate.Outline.Area - pieces.Sum(p => p.Outline.Area), -Agreement, Agreement);
        if (pieces.Count == 1) return;

        bool IsRim(Segment s) => s.IsLine && ((s.Start.X == s.End.X && (Math.Abs(s.Start.X) < Agreement || Math.Abs(s.Start.X - guide.Plate.Length.Value) < Agreement)) || (s.Start.Y == s.End.Y && (Math.Abs(s.Start.Y) < Agreement || Math.Abs(s.Start.Y - guide.Plate.Width.Value) < Agreement)));
        var inner = pieces.SelectMany(p => p.Outline.Segments).Where(s => !IsRim(s)).ToList();
        // Each stretch of a joint runs once each way: what is a knob here is its socket there.
        Assert.All(inner, s => Assert.Single(inner, o => IsSame(o, s.Reversed)));
        Assert.All(inner, s => Assert.Single(inner, o => IsSame(o, s)));
        Assert.All(inner.Where(s => !s.IsLine), s => Assert.True(s.Radius >= job.Settings.CutterRadius() - Agreement, $"an arc of {s.Radius}"));
        foreach (var p in Grid(guide.Plate).Where(p => pieces.All(q => q.Outline.DistanceTo(p) > Agreement))) Assert.Single(pieces, q => q.Outline.Contains(p));
        foreach (var hole in guide.Holes)
        {
            var (panel, outline) = Assert.Single(pieces, q => q.Outline.Contains(hole.At));
            Assert.True(outline.DistanceTo(hole.At) >= hole.Diameter / 2 + 4 - Agreement, $"{guide.Name}: joint beside hole {hole.Number}");
            Assert.Contains(panel.Features.OfType<Bore>(), b => b.Diameter.Value == hole.Diameter);
        }

        foreach (var face in new[] { Surface.Inside, Surface.Outside })
            Assert.True(pieces.Sum(p => p.Panel.Features.Count(f => f is Mark m && m.Face == face)) >= guide.Plate.Features.Count(f => f is Mark m && m.Face == face));
        Assert.Equal(guide.Plate.Features.Count(f => f is not Mark), pieces.Sum(p => p.Panel.Features.Count(f => f is not Mark)));
        foreach (var slot in guide.Fences.SelectMany(f => f.Slots)) Assert.Single(pieces, q => new[] { slot.Min, slot.Max, new(slot.Min.X, slot.Max.Y), new(slot.Max.X, slot.Min.Y) }.All(c => q.Outline.Contains(c) && q.Outline.DistanceTo(c) > 1));
    }

    private static void CanBeCut(Guide guide, GuideJob job)
    {
        foreach (var program in job.Programs.Where(p => p.Guide == guide).Select(p => p.Program))
        {
            Assert.All(program.Operations.OfType<ProfileOperation>(), o => Assert.True(o.Tool.IsKnown, $"{program.Name}: {o.Finished.Bounds}"));
            var outline = program.Panels[0].Outline;
            Assert.All(program.Operations.OfType<EngraveOperation>().SelectMany(o => o.Strokes).SelectMany(s => s.Segments), s => Assert.True(outline.Contains(s.Start) && outline.Contains(s.End), $"{program.Name} {s}"));
        }
    }

    private static void WordsAreEngraved(Guide guide, GuideJob job)
    {
        foreach (var part in guide.Parts)
            foreach (var face in part.Words.Select(w => w.Face).Distinct())
            {
                var program = Assert.Single(job.Programs, p => p.Program.Panels[0].Panel == part.Panel && p.Program.Panels[0].Lie.Up == face).Program;
                Assert.Equal(part.Words.Where(w => w.Face == face).Sum(w => w.Strokes.Length), program.Operations.OfType<EngraveOperation>().Where(o => o.What == Engraving.Name).Sum(o => o.Strokes.Length));
            }
    }

    private static void WordsAreFree(Guide guide)
    {
        foreach (var face in new[] { Surface.Inside, Surface.Outside })
        {
            var boxes = guide.Pieces.SelectMany(p => p.Words.Where(w => w.Face == face).Select(w => (w.Text, Box: Box2.Around([.. w.Strokes.SelectMany(s => s).Select(q => q + p.Corner!.Value)])))).ToList();
            Assert.Equal(face == Surface.Inside || guide.Template.HasMirror, boxes.Count > 0);
            for (var i = 0; i < boxes.Count; i++)
            {
                Assert.All(boxes.Skip(i + 1), b => Assert.False(Meet(b.Box, boxes[i].Box), $"{guide.Name}: {b.Text} on {boxes[i].Text}"));
                Assert.All(guide.Holes, h => Assert.False(Meet(boxes[i].Box, new Box2(h.At, h.At).Grown(h.Diameter / 2))));
                Assert.All(guide.Fences.SelectMany(f => f.Slots), s => Assert.False(Meet(boxes[i].Box, s)));
            }
        }
    }

    private static void SheetIsReadable(Guide guide, GuideJob job, Design design)
    {
        var sheet = GuideSheet.Of(guide, guide.Template.Places, "p", job.Settings, design.Drawings.Sheets);
        var boxes = sheet.Entities.OfType<TextEntity>().Concat(sheet.Entities.OfType<Dimension>().SelectMany(DimensionGraphics.Of).OfType<TextEntity>()).Where(t => t.Layer.Name != "TITLE_BLOCK").Select(t => (t.Text, t.Bounds)).ToList();
        // Ascenders of one line may reach into the descenders' share of the line above.
        for (var i = 0; i < boxes.Count; i++)
            Assert.All(boxes.Skip(i + 1), b => Assert.False(Meet(b.Bounds.Grown(-0.5), boxes[i].Bounds.Grown(-0.5)), $"{guide.Name}: “{b.Text}” on “{boxes[i].Text}”"));
        Assert.All(boxes, b => Assert.True(b.Bounds.Min.X > 20 && b.Bounds.Max.X < sheet.Page!.Value.X - 10 && b.Bounds.Min.Y > 9 && b.Bounds.Max.Y < sheet.Page.Value.Y - 10, $"{guide.Name}: “{b.Text}” beyond the frame"));
        Assert.All(new[] { "A", "B" }, t => Assert.Contains(boxes, b => b.Text == t));
        // Where holes stand close some numbers find no room; they are engraved, and on the panel's own sheet.
        Assert.Contains(guide.Holes, h => boxes.Exists(b => b.Text == h.Number.ToString(CultureInfo.InvariantCulture)));
    }

    private static IEnumerable<Point2> Grid(Panel plate) => from i in Enumerable.Range(0, 24) from j in Enumerable.Range(0, 24) select new Point2((i + 0.513) / 24 * plate.Length.Value, (j + 0.487) / 24 * plate.Width.Value);

    private static IEnumerable<Point2> CornersOf(Panel panel, Surface edge)
    {
        var (length, width) = (panel.Length.Value, panel.Width.Value);
        return edge switch { Surface.Start => [new(0, 0), new(0, width)], Surface.End => [new(length, 0), new(length, width)], Surface.Near => [new(0, 0), new(length, 0)], _ => [new(0, width), new(length, width)] };
    }

    private static double Away(Box2 box, Point2 p) => new Point2(Math.Clamp(p.X, box.Min.X, box.Max.X), Math.Clamp(p.Y, box.Min.Y, box.Max.Y)).DistanceTo(p);

    private static bool Meet(Box2 a, Box2 b) => a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y;

    private static bool IsSame(Segment a, Segment b) => a.Start.DistanceTo(b.Start) < Agreement && a.End.DistanceTo(b.End) < Agreement && Math.Abs(a.Bulge - b.Bulge) < Agreement;
}
