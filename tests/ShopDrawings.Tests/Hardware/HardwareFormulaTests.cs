using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Hardware;

public class HardwareFormulaTests
{
    private const double Gravity = 9.80665;

    [Theory]
    [InlineData(900, 2)]
    [InlineData(900.1, 3)]
    [InlineData(1600, 3)]
    [InlineData(2000, 4)]
    [InlineData(2000.1, 5)]
    [InlineData(2400, 5)]
    public void Height_asks_for_hinges(double height, int count) => Assert.Equal(count, HingeGeometry.ByHeight(height));

    [Theory]
    [InlineData(6, 2)]
    [InlineData(6.1, 3)]
    [InlineData(12, 3)]
    [InlineData(17, 4)]
    [InlineData(17.1, 5)]
    [InlineData(22, 5)]
    public void Mass_asks_for_hinges(double mass, int count) => Assert.Equal(count, HingeGeometry.ByMass(mass));

    [Fact]
    public void Plate_gives_back_its_overlay() => Gen.Select(Gen.Double[0, 20], Gen.Double[3, 8], Gen.Double[0, 20]).Sample((constant, boring, overlay) =>
        Assert.Equal(overlay, HingeGeometry.Overlay(Mm(constant), Mm(boring), HingeGeometry.PlateHeight(Mm(constant), Mm(boring), Mm(overlay))).Value, 1e-9));

    // The door's corner turned about the hinge, sampled: its farthest point is what the gap makes room for.
    [Fact]
    public void Swing_gap_is_the_farthest_reach_of_the_turning_door() => Gen.Select(Gen.Double[200, 700], Gen.Double[12, 30]).Sample((width, thickness) =>
    {
        var farthest = Enumerable.Range(0, 9001).Select(i => i * Math.PI / 18000).Max(a => width * Math.Cos(a) + thickness * Math.Sin(a));

        Assert.Equal(farthest - width, HingeGeometry.SwingGap(width, thickness), 1e-3);
    });

    [Theory]
    [InlineData(0, 0)]
    [InlineData(90, 0)]
    [InlineData(120, 200)]
    [InlineData(180, 400)]
    public void Open_door_stands_over_its_side(double angle, double overhang) => Assert.Equal(overhang, HingeGeometry.SideOverhang(400, angle), 1e-9);

    // Moments about the lowest hinge: the weight at half the width against the pull of the highest.
    [Fact]
    public void Couple_of_hinges_balances_the_door() => Gen.Select(Gen.Double[1, 25], Gen.Double[200, 700], Gen.Double[200, 2000]).Sample((mass, width, spacing) =>
        Assert.Equal(mass * Gravity * width / 2, HingeGeometry.CoupleForce(mass, width, spacing) * spacing, 1e-6));

    // Forces up and down and moments about the front fixing come to nothing.
    [Fact]
    public void Fixings_of_slides_balance_the_load() => Gen.Select(Gen.Double[1, 60], Gen.Double[0, 500], Gen.Double[100, 600]).Sample((load, lever, span) =>
    {
        var (down, up) = (SlideGeometry.FrontFixingDown(load, lever, span), SlideGeometry.RearFixingUp(load, lever, span));

        Assert.Equal(load * Gravity / 2, down - up, 1e-6);
        Assert.Equal(load * Gravity / 2 * lever, up * span, 1e-6);
    });

    [Fact]
    public void Longest_slide_fits_and_the_next_does_not() => Gen.Double[100, 900].Sample(depth =>
    {
        double[] series = [500, 250, 300, 700, 350, 400, 450, 550, 600, 650];
        var longest = SlideGeometry.Longest(series, depth, 3, 50);

        Assert.Equal(depth >= 303, longest is not null);
        if (longest is { } length) Assert.True(length + 53 <= depth + 1e-6 && (length == 700 || length + 50 + 53 > depth));
    });

    [Fact]
    public void Slide_as_long_as_the_room_fits() => Assert.Equal(500, SlideGeometry.Longest([450, 500], 553, 3, 50));

    [Fact]
    public void Full_extension_travels_its_length() => Assert.Equal((500, 375), (SlideGeometry.Travel(500, SlideExtension.Full), SlideGeometry.Travel(500, SlideExtension.ThreeQuarter)));

    [Fact]
    public void Axles_share_the_whole_load() => Gen.Select(Gen.Double[10, 200], Gen.Double[200, 700], Gen.Double[0, 1]).Sample((total, wheelbase, part) =>
    {
        var fromFront = part * wheelbase;
        var (front, rear) = (CastorLoads.OfAxle(total, wheelbase, wheelbase - fromFront), CastorLoads.OfAxle(total, wheelbase, fromFront));

        Assert.Equal(total, 2 * front + 2 * rear, 1e-9);
        Assert.Equal(total * fromFront, 2 * rear * wheelbase, 1e-6);
    });

    // Moments about the step's edge, from the wheel's circle itself: the pull at the axle's height above the edge, the weight at its distance.
    [Fact]
    public void Pull_over_a_step_balances_the_weight() => Gen.Select(Gen.Double[40, 125], Gen.Double[0.05, 0.9], Gen.Double[5, 60]).Sample((diameter, part, load) =>
    {
        var step = part * diameter / 2;
        var height = diameter / 2 - step;
        var distance = diameter / 2 * Math.Sin(Math.Acos(height / (diameter / 2)));

        Assert.Equal(load * Gravity * distance, CastorLoads.PullOverStep(load, diameter, step) * height, 1e-6 * load * diameter);
        Assert.True(CastorLoads.PullOverStep(load, diameter, step * 1.05) > CastorLoads.PullOverStep(load, diameter, step));
    });

    [Fact]
    public void Step_as_high_as_the_axle_stops_the_wheel() => Assert.Equal(double.PositiveInfinity, CastorLoads.PullOverStep(20, 75, 37.5));

    private static Size Mm(double value) => Size.Given(value, "given", default);
}
