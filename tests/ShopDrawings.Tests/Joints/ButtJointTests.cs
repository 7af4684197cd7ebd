using CsCheck;
using ShopDrawings.Kernel;
using UnitsNet;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Joints;

public class ButtJointTests
{
    private static readonly Screw Screw = new("s", Mm(4), Mm(50), Mm(8), Mm(4.5), Mm(2.8));

    private static Size Mm(double value) => Size.Default(value, "size");

    private sealed record Joined(Joint Joint, Bore[] Clearances, Bore[] Pilots);

    private static Joined? Join(Panel through, Panel receiving) =>
        JointWriter.Butt(through, receiving, new JointRule(Screw, RowRule.Standard)) is { } written
            ? new(written.Joint, [.. written.OfThrough.Cast<Bore>()], [.. written.OfReceiving.Cast<Bore>()])
            : null;

    /// <summary>Two boxes of the assembly: one panel's face lies on the other's edge, which may reach beyond it lengthways.</summary>
    internal sealed record Case(Panel Through, Panel Receiving, Box3 Contact, Direction Towards);

    private static Panel Fill(string id, double[] min, double[] max, Direction outside, Direction along, double gap = 0, Direction towards = Direction.Left)
    {
        var turned = Placement.Facing(Size.Zero, Size.Zero, Size.Zero, outside, along);
        double Origin(int axis)
        {
            var direction = new[] { turned.AlongLength, turned.AlongWidth, turned.Inwards }.Single(d => d.Axis() == axis);
            return (direction.IsPositive() ? min[axis] : max[axis]) + (axis == towards.Axis() ? gap * (towards.IsPositive() ? 1 : -1) : 0);
        }

        double Extent(Direction d) => max[d.Axis()] - min[d.Axis()];
        return Panel.Rectangular(id, Board.Create("b", BoardKind.Mdf, Length.FromMillimeters(Extent(turned.Inwards))), Mm(Extent(turned.AlongLength)), Mm(Extent(turned.AlongWidth)),
            Placement.Facing(Mm(Origin(0)), Mm(Origin(1)), Mm(Origin(2)), outside, along));
    }

    // The receiving panel stands on the through panel's surface that looks `towards`; along `run` the two meet on a stretch.
    private static Gen<Case> Cases(double gap = 0) =>
        Gen.Select(Gen.Enum<Direction>(), Gen.Bool, Gen.Bool, Gen.Bool, Gen.Int[0, 3], Gen.Double[-500, 500].Array[3], Gen.Double[0, 1].Array[6])
        .Select((towards, swap, flipThrough, flipReceiving, turns, corner, share) =>
        {
            var normal = towards.Axis();
            var (run, across) = swap ? ((normal + 1) % 3, (normal + 2) % 3) : ((normal + 2) % 3, (normal + 1) % 3);
            var (thick, reach) = (12 + 10 * share[0], 100 + 300 * share[1]);
            double[] min = [.. corner], max = new double[3];
            max[normal] = min[normal] + 12 + 10 * share[2];
            max[run] = min[run] + 200 + 600 * share[3];
            max[across] = min[across] + 60 + 200 * share[4];
            double[] low = new double[3], high = new double[3];
            (low[normal], high[normal]) = towards.IsPositive() ? (max[normal], max[normal] + reach) : (min[normal] - reach, min[normal]);
            low[across] = min[across] + share[5] * (max[across] - min[across] - thick);
            high[across] = low[across] + thick;
            // Whole, inside, beyond the beginning, beyond the end.
            (low[run], high[run]) = turns switch
            {
                0 => (min[run], max[run]),
                1 => (min[run] + 20 * share[1], max[run] - 30 * share[0]),
                2 => (min[run] - 50 * share[1] - 1, max[run] - 30),
                _ => (min[run] + 10, max[run] + 40 * share[0] + 1),
            };
            static Direction Of(int axis, bool positive) => (Direction)(axis * 2 + (positive ? 1 : 0));
            var through = Fill("through", min, max, Of(normal, flipThrough), Of(swap ? run : across, flipReceiving));
            var receiving = Fill("receiving", low, high, Of(across, flipReceiving), Of(flipThrough ? run : normal, swap), gap, towards);
            double[] from = [.. low], to = [.. high];
            from[normal] = to[normal] = towards.IsPositive() ? max[normal] : min[normal];
            (from[run], to[run]) = (Math.Max(low[run], min[run]), Math.Min(high[run], max[run]));
            return new Case(through, receiving, new Box3(new(from[0], from[1], from[2]), new(to[0], to[1], to[2])), towards);
        });

    // Where a bore begins and which way it runs, from the placement's numbers alone.
    private static (Point3 Entry, Point3 Into) Axis(Panel panel, Bore bore)
    {
        var (x, y) = (bore.At.X.Value, bore.At.Y.Value);
        var (length, width, thickness) = (panel.Length.Value, panel.Width.Value, panel.Thickness.Value);
        var (entry, into) = bore.Surface switch
        {
            Surface.Inside => (new Point3(x, y, thickness), new Point3(0, 0, -1)),
            Surface.Outside => (new Point3(x, y, 0), new Point3(0, 0, 1)),
            Surface.Start => (new Point3(0, x, y), new Point3(1, 0, 0)),
            Surface.End => (new Point3(length, x, y), new Point3(-1, 0, 0)),
            Surface.Near => (new Point3(x, 0, y), new Point3(0, 1, 0)),
            _ => (new Point3(x, width, y), new Point3(0, -1, 0)),
        };
        var placement = panel.Placement!;
        Point3 Turned(Point3 p)
        {
            var turned = new double[3];
            foreach (var (direction, value) in new[] { (placement.AlongLength, p.X), (placement.AlongWidth, p.Y), (placement.Inwards, p.Z) })
                turned[(int)direction / 2] += (int)direction % 2 == 1 ? value : -value;
            return new Point3(turned[0], turned[1], turned[2]);
        }

        return (new Point3(placement.X.Value, placement.Y.Value, placement.Z.Value) + Turned(entry), Turned(into));
    }

    [Fact]
    public void Clearance_and_pilot_lie_on_one_axis_through_the_contact() =>
        Cases().Sample(c =>
        {
            var written = Join(c.Through, c.Receiving);

            Assert.NotNull(written);
            Assert.Equal(written.Clearances.Length, written.Pilots.Length);
            Assert.Equal(written.Clearances.Length, written.Joint.Fasteners.Length);
            Assert.Equal(written.Joint.Row!.Count, written.Pilots.Length);
            var middle = (c.Contact.Min + c.Contact.Max) * 0.5;
            for (var i = 0; i < written.Pilots.Length; i++)
            {
                var (head, down) = Axis(c.Through, written.Clearances[i]);
                var (mouth, into) = Axis(c.Receiving, written.Pilots[i]);
                Assert.Equal(c.Towards.Vector(), into);
                Assert.Equal(into, down);
                // Across the through panel's thickness from head to mouth, and nowhere else.
                Assert.InRange((mouth - head - into * c.Through.Thickness.Value).Length, 0, 1e-6);
                Assert.Equal(50 - c.Through.Thickness.Value, written.Pilots[i].Depth!.Value, 1e-9);
                Assert.Null(written.Clearances[i].Depth);
                Assert.Equal((4.5, 2.8), (written.Clearances[i].Diameter.Value, written.Pilots[i].Diameter.Value));
                Assert.Equal((BoreUse.Clearance, BoreUse.Pilot), (written.Clearances[i].Use, written.Pilots[i].Use));
                // On the contact, in the middle of the edge.
                Assert.Equal(mouth, Point3.Min(Point3.Max(mouth, c.Contact.Min - new Point3(1, 1, 1) * 1e-6), c.Contact.Max + new Point3(1, 1, 1) * 1e-6));
                var across = c.Receiving.Placement!.Inwards.Axis();
                Assert.Equal(middle.Along(across), mouth.Along(across), 1e-6);
                Assert.InRange((written.Joint.Fasteners[i].Head - head).Length, 0, 1e-6);
                Assert.InRange((written.Joint.Fasteners[i].Tip - head - into * 50).Length, 0, 1e-6);
            }

            // The row begins and ends at the same distance from the ends of the contact.
            var run = 3 - c.Towards.Axis() - c.Receiving.Placement!.Inwards.Axis();
            var places = written.Pilots.Select(p => Axis(c.Receiving, p).Entry.Along(run)).Order().ToArray();
            var end = Math.Min(50, c.Contact.Size.Along(run) / 4);
            Assert.Equal(end, places[0] - c.Contact.Min.Along(run), 1e-6);
            Assert.Equal(end, c.Contact.Max.Along(run) - places[^1], 1e-6);
            Assert.All(written.Pilots.SelectMany(p => p.Sizes).Concat(written.Clearances.SelectMany(p => p.Sizes)), size => Assert.Equal(size.Value, size.Recomputed()));
        }, iter: 500);

    [Theory]
    [InlineData(0.001)]     // apart
    [InlineData(-0.001)]    // one inside the other
    [InlineData(100)]
    public void Panels_that_do_not_touch_are_not_joined(double gap) =>
        Cases(gap).Sample(c => Join(c.Through, c.Receiving) is null, iter: 200);

    [Theory]
    [InlineData(0, 282.001, true)]          // rear edges level
    [InlineData(0, 282.1, true)]            // behind the rear edge, and no longer on the face
    [InlineData(0, -0.1, true)]
    [InlineData(700, 100, true)]            // above the face
    [InlineData(0, 100, false)]
    [InlineData(0, 282, false)]
    [InlineData(0, 0, false)]
    public void Edge_that_is_not_wholly_on_the_face_is_not_joined(double up, double back, bool isApart)
    {
        var side = Fill("side", [0, 0, 0], [18, 300, 700], Direction.Left, Direction.Top);
        var rail = Fill("rail", [18, back, up], [500, back + 18, up + 90], Direction.Back, Direction.Right);

        Assert.Equal(isApart, Join(side, rail) is null);
    }

    [Fact]
    public void Screw_no_longer_than_the_panel_is_thick_gets_no_pilot()
    {
        var side = Fill("side", [0, 0, 0], [50, 300, 700], Direction.Left, Direction.Top);
        var bottom = Fill("bottom", [50, 0, 0], [500, 300, 18], Direction.Bottom, Direction.Right);

        var written = Join(side, bottom);

        Assert.NotNull(written);
        Assert.Empty(written.Pilots);
        Assert.Equal(written.Joint.Row!.Count, written.Clearances.Length);
    }

    [Fact]
    public void Row_keeps_to_the_straight_part_of_the_edge()
    {
        var side = Fill("side", [0, 0, 0], [18, 300, 700], Direction.Left, Direction.Top);
        var bottom = Fill("bottom", [18, 0, 0], [518, 300, 18], Direction.Bottom, Direction.Right)
            .WithOutline(Contour.RoundedRectangle(0, 0, 500, 300, 40));

        var pilots = Join(side, bottom)!.Pilots;

        Assert.Equal([90, 210], pilots.Select(p => Math.Round(p.At.X.Value, 6)));
        Assert.All(pilots, p => Assert.Equal((Surface.Start, 9.0), (p.Surface, p.At.Y.Value)));
    }
}
