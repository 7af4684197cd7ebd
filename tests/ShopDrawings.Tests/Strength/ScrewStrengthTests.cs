using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Strength;

public class ScrewStrengthTests
{
    private const double Inch = 25.4;
    private const double Pound = 4.4482216152605;

    private static readonly Gen<(double Diameter, double Thread, double Gravity)> Any = Gen.Select(Gen.Double[3, 8], Gen.Double[5, 60], Gen.Double[0.4, 0.9]);

    // The same formula in inches with the handbook's own inch constants; they are printed to three and four figures.
    [Fact]
    public void Withdrawal_agrees_with_the_formula_in_inches() => Any.Sample((diameter, thread, gravity) =>
    {
        double InInches(double constant) => constant * Math.Sqrt(diameter / Inch) * Math.Pow((thread - diameter / 3) / Inch, 1.25) * gravity * gravity * Pound;

        Assert.InRange(ScrewStrength.FromParticleboardFace(diameter, thread, gravity) / InInches(2655), 0.997, 1.003);
        Assert.InRange(ScrewStrength.FromParticleboardEdge(diameter, thread, gravity) / InInches(2055), 0.997, 1.003);
        Assert.InRange(ScrewStrength.FromWood(diameter, thread, gravity) / (15700 * gravity * gravity * (diameter / Inch) * (thread / Inch) * Pound), 0.997, 1.003);
    });

    [Fact]
    public void Withdrawal_grows_with_thread_diameter_and_density() => Any.Sample((diameter, thread, gravity) =>
    {
        foreach (var formula in new Func<double, double, double, double>[] { ScrewStrength.FromParticleboardFace, ScrewStrength.FromParticleboardEdge, ScrewStrength.FromWood, ScrewStrength.DesignFromWood })
        {
            var force = formula(diameter, thread, gravity);
            Assert.True(force > 0);
            Assert.True(formula(diameter, thread * 1.1, gravity) > force);
            Assert.True(formula(diameter, thread, gravity * 1.1) > force);
        }

        Assert.True(ScrewStrength.FromParticleboardEdge(diameter, thread, gravity) < ScrewStrength.FromParticleboardFace(diameter, thread, gravity));
        Assert.True(ScrewStrength.DesignFromWood(diameter, thread, gravity) < ScrewStrength.FromWood(diameter, thread, gravity));
    });

    [Fact]
    public void Thread_no_longer_than_its_point_holds_nothing() => Assert.Equal(0, ScrewStrength.FromParticleboardFace(6, 2, 0.7));

    // Tests that a survey of the forest products laboratory gathered put the edge at 0.75 to 0.80 of the face.
    [Fact]
    public void Edge_holds_what_tests_found() =>
        Assert.InRange(ScrewStrength.FromParticleboardEdge(4, 20, 0.7) / ScrewStrength.FromParticleboardFace(4, 20, 0.7), 0.75, 0.80);

    // The handbook's inch form: 27.98 + 1.36 X in·lb with X in lb/ft³.
    [Fact]
    public void Torque_limit_agrees_with_the_formula_in_inches() => Gen.Double[500, 900].Sample(density =>
        Assert.Equal((27.98 + 1.36 * density / 16.018463) * Inch * Pound / 1000, ScrewStrength.TorqueLimit(density), 0.02));

    [Fact]
    public void Group_shares_its_load() => Assert.Equal(
        (800, 1000), (ScrewStrength.GroupDesignLoad(1000, 4, ScrewStrength.SustainedFactor), ScrewStrength.GroupDesignLoad(1000, 4, ScrewStrength.OccasionalFactor)));
}
