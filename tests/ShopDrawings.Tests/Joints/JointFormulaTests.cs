using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Joints;

public class JointFormulaTests
{
    // Two screws in one plane, laid out and measured: at the least end distance the wood between them is the clearance.
    [Fact]
    public void Least_end_distance_leaves_the_clearance() =>
        Gen.Select(Gen.Double[20, 60], Gen.Double[3, 7], Gen.Double[3, 7], Gen.Double[1, 6]).Sample((tips, diameter, other, clearance) =>
        {
            var end = CornerRows.LeastEndDistance(Mm(tips), Mm(diameter), Mm(other), Mm(clearance)).Value;
            var reaching = new Axis(new Point3(0, 40, 8), new Point3(tips, 40, 8));
            var row = new Axis(new Point3(end, 0, 8), new Point3(end, 100, 8));

            Assert.Equal(clearance, reaching.Gap(row, other, diameter), 1e-9);
        });

    [Fact]
    public void Last_pin_row_is_the_last_that_leaves_the_set_back() => Gen.Double[80, 800].Sample(depth =>
    {
        var last = PinRows.Last(Mm(depth), PinRows.SetBack).Value;

        Assert.InRange(depth - last, 37 - 1e-6, 37 + 32);
        Assert.Equal(0, Math.IEEERemainder(last - 37, 32), 1e-9);
    });

    [Fact]
    public void Balanced_depth_puts_the_last_row_as_far_from_the_rear_edge() => Gen.Int[0, 25].Sample(pitches =>
    {
        var depth = PinRows.BalancedDepth(pitches, PinRows.SetBack);

        Assert.Equal(37, depth.Value - PinRows.Last(depth, PinRows.SetBack).Value, 1e-9);
    });

    [Fact]
    public void Depths_can_be_worked_out_again() => Assert.All(
        [
            BoreDepths.DowelInEdge(Mm(30), Mm(11), Mm(2)), BoreDepths.ConnectorInEdge(Mm(50), Mm(16), Mm(4)), PinRows.Last(Mm(560), PinRows.SetBack),
            CornerRows.LeastEndDistance(Mm(50), Mm(4), Mm(4), Size.Default(CornerRows.UsualClearance, "clearance")),
        ],
        size => Assert.Equal(size.Value, size.Recomputed()));

    private static Size Mm(double value) => Size.Given(value, "given", default);
}
