using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Joints;

/// <summary>What holds for any cabinet with any joints and hardware, looked at from outside: from the finished panels' numbers alone.</summary>
public class FittedCabinetTests
{
    private const double Close = 1e-6;

    private sealed record Made(Design Design, List<Hole> Holes, IReadOnlyList<Finding> Findings)
    {
        public Assembly Assembly => Design.Assembly;

        public bool Names(Panel panel, params string[] rules) => Findings.Any(f => f.Severity != Severity.Note && f.Panels.Contains(panel.Id) && rules.Contains(f.Rule));
    }

    // Nothing where the project is refused; then it is with a message and not by a fault of ours.
    private static Made? Make(FittedCabinet cabinet)
    {
        var loaded = Shop.Load(cabinet.Text, "test.yaml");
        Assert.Empty(loaded.Diagnostics);
        var resolved = Shop.Resolve(loaded.Value!);
        if (resolved.Value is not { } design)
        {
            Assert.NotEmpty(resolved.Diagnostics);
            return null;
        }

        return new Made(design, Hole.Of(design.Assembly), Shop.Check(design));
    }

    // Each cabinet is made once for all that is looked at, as making one takes longest.
    [Fact]
    public void Bores_fasteners_and_sizes_are_sound_in_any_cabinet()
    {
        var (built, all) = (0, 0);
        FittedCabinet.Any.Sample(cabinet =>
        {
            Interlocked.Increment(ref all);
            if (Make(cabinet) is not { } made) return;
            Interlocked.Increment(ref built);
            StaysInItsPanel(made);
            MeetsNoOther(made);
            SharesOneAxis(made);
            Recomputes(made);
        }, iter: 100);

        Assert.InRange(built, all * 8 / 10, all);
    }

    private static void StaysInItsPanel(Made made)
    {
        foreach (var hole in made.Holes)
        {
            var (panel, bore) = (hole.Panel, hole.Bore);
            var (length, width, t) = (panel.Length.Value, panel.Width.Value, panel.Thickness.Value);
            var (x, y) = (bore.At.X.Value, bore.At.Y.Value);
            var (across, behind, least) = bore.Surface switch
            {
                Surface.Inside or Surface.Outside => (Math.Min(Math.Min(x, length - x), Math.Min(y, width - y)), t, 2.0),
                Surface.Start or Surface.End => (Math.Min(Math.Min(x, width - x), Math.Min(y, t - y)), length, 0),
                _ => (Math.Min(Math.Min(x, length - x), Math.Min(y, t - y)), width, 0),
            };
            if (across < hole.Radius - Close) Assert.True(made.Names(panel, "bore-in-panel"), $"{hole} of {bore.Origin} leaves its panel");
            if (bore.Depth is not null && behind - hole.Depth < least - Close)
                Assert.True(made.Names(panel, "bore-in-panel", "hardware-fits"), $"{hole} of {bore.Origin} comes through");
            // 4 mm on either side of a bore in an edge: common practice, no source.
            if (bore.Surface is not (Surface.Inside or Surface.Outside) && Math.Min(y, t - y) - hole.Radius < 4 - Close)
                Assert.True(made.Names(panel, "hardware-fits"), $"{hole} of {bore.Origin} leaves too thin a wall");
        }
    }

    private static void MeetsNoOther(Made made)
    {
        string[] rules = ["bores-meet", "panels-overlap", "screws-can-be-driven"];
        for (var i = 0; i < made.Holes.Count; i++)
            for (var j = i + 1; j < made.Holes.Count; j++)
            {
                var (a, b) = (made.Holes[i], made.Holes[j]);
                var isOneFastener = a.Bore.Origin == b.Bore.Origin && a.Bore.Fastener == b.Bore.Fastener;
                if (isOneFastener || !a.Meets(b)) continue;
                // Bores of two panels meet only where one leaves its own, which is said of that panel.
                if (a.Panel != b.Panel && (made.Names(a.Panel, "bore-in-panel") || made.Names(b.Panel, "bore-in-panel"))) continue;
                Assert.True(made.Names(a.Panel, rules) || made.Names(b.Panel, rules), $"{a} of {a.Bore.Origin} and {b} of {b.Bore.Origin} meet");
            }
    }

    // Every row stands on the middle of the held panel's edge, and what enters the face goes on in it.
    private static void SharesOneAxis(Made made)
    {
        foreach (var joint in made.Assembly.Joints.Where(j => j.Held is not (Surface.Inside or Surface.Outside)))
        {
            var held = made.Assembly.Panel(joint.Receiving);
            var ofJoint = made.Holes.Where(h => h.Bore.Origin == joint.Id).ToLookup(h => h.Bore.Fastener!.Value);
            Assert.Equal(Enumerable.Range(1, joint.Fasteners.Length), ofJoint.Select(g => g.Key).Order());
            foreach (var one in ofJoint)
            {
                var fastener = joint.Fasteners[one.Key - 1].Fastener;
                var inEdge = one.Where(h => h.Panel == held && h.Bore.Surface == joint.Held).ToList();
                Assert.All(inEdge, h => Assert.Equal(held.Thickness.Value / 2, h.Bore.At.Y.Value, Close));
                if (fastener is CornerBracket) continue;
                var mouth = Assert.Single(inEdge);
                var others = one.Where(h => h.Panel.Id == joint.Through).ToList();
                Assert.NotEmpty(others);
                foreach (var other in others)
                {
                    Assert.Equal(mouth.Axis, other.Axis);
                    for (var i = 0; i < 3; i++)
                        if (i != mouth.Axis) Assert.Equal(mouth.Entry[i], other.Entry[i], Close);
                }
            }
        }
    }

    private static void Recomputes(Made made)
    {
        foreach (var size in made.Assembly.Panels.SelectMany(p => p.Sizes).Concat(made.Assembly.Hardware.SelectMany(h => h.Sizes.Concat(h.Mounts.SelectMany(m => new[] { m.At.X, m.At.Y }))))
            .Concat(made.Assembly.Joints.SelectMany(j => j.Fasteners.Select(f => f.Along))).Concat(made.Assembly.Motions.OfType<Travel>().Select(t => t.Distance)))
            Assert.Equal(size.Value, size.Recomputed(), 1e-9);
    }

    // The label says 19.05, the caliper 18.6: sizes given inside stay, and all else follows.
    [Fact]
    public void Thinner_board_keeps_what_is_clear_inside() => FittedCabinet.Any.Sample(cabinet =>
    {
        var inside = cabinet with { Shape = cabinet.Shape == "recess: 60" ? "" : cabinet.Shape };
        string Text(double board) => (inside with { Board = board }).Text
            .Replace(FormattableString.Invariant($"width: {cabinet.Width:0.####}, height: {cabinet.Height:0.####}, depth: {cabinet.Depth:0.####}"), "inside: {width: 700, height: 800, depth: 500}");
        var (nominal, actual) = (Shop.Resolve(Shop.Load(Text(19.05), "test.yaml").Value!).Value?.Assembly, Shop.Resolve(Shop.Load(Text(18.6), "test.yaml").Value!).Value?.Assembly);
        if (nominal is null || actual is null) return;

        foreach (var assembly in new[] { nominal, actual })
        {
            Assert.Equal(700, Box(assembly, "right-side").Min.X - Box(assembly, "left-side").Max.X, Close);
            Assert.Equal(800, Box(assembly, "top").Min.Z - Box(assembly, "bottom").Max.Z, Close);
        }

        Assert.Equal(nominal.Panels.Select(p => p.Id).Where(IsNoPacker), actual.Panels.Select(p => p.Id).Where(IsNoPacker));
        Assert.Equal(2 * (19.05 - 18.6), Box(nominal, "right-side").Max.X - Box(actual, "right-side").Max.X, Close);
        foreach (var bore in Hole.Of(actual).Where(h => h.Bore.Surface is not (Surface.Inside or Surface.Outside))) Assert.Equal(bore.Panel.Thickness.Value / 2, bore.Bore.At.Y.Value, Close);
    }, iter: 100);

    private static bool IsNoPacker(string id) => !id.Contains("-packer", StringComparison.Ordinal);

    private static Box3 Box(Assembly assembly, string id) => assembly.Panel(id).Placement!.ToAssembly(assembly.Panel(id).Box);
}
