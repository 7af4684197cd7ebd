namespace ShopDrawings.Kernel;

/// <summary>What castors carry and what they roll over. Lengths in mm, masses in kg, forces in N.</summary>
internal static class CastorLoads
{
    /// <summary>Part of the wheel's diameter an obstacle may be high for the usual factors: page of a castor maker.</summary>
    public const double UsualObstacle = 0.05;

    /// <summary>What each castor must bear on an uneven floor, where one hangs free: all that stands on them ÷ (castors − 1) (castor makers' pages).</summary>
    public static double OnUnevenFloor(double totalKg, int castors) => totalKg / (castors - 1);

    /// <summary>The same by a factor: total × factor ÷ castors; 1.33 in general, 1.0 to 1.5 pushed by hand indoors (page of a castor maker).</summary>
    public static double WithFactor(double totalKg, int castors, double factor) => totalKg * factor / castors;

    /// <summary>
    /// What each of the two castors of an axle bears on a level floor: half the total × distance of the centre of gravity from the other
    /// axle ÷ wheelbase (derived, statics).
    /// </summary>
    public static double OfAxle(double totalKg, double wheelbase, double fromOtherAxle) => totalKg * fromOtherAxle / wheelbase / 2;

    /// <summary>
    /// Horizontal pull at the axle that lifts a wheel over a step: W √(2 r h − h²) ÷ (r − h) (derived, statics). Endless for a step as high as
    /// the axle or higher.
    /// </summary>
    /// <param name="loadKg">On the wheel.</param>
    /// <param name="wheelDiameter">Of the wheel.</param>
    /// <param name="step">Height of the step.</param>
    public static double PullOverStep(double loadKg, double wheelDiameter, double step)
    {
        var radius = wheelDiameter / 2;
        return step >= radius ? double.PositiveInfinity : loadKg * Gravity.Standard * Math.Sqrt(2 * radius * step - step * step) / (radius - step);
    }

    /// <summary>The highest obstacle for the usual factors: a part of the wheel's diameter (page of a castor maker).</summary>
    public static double HighestObstacle(double wheelDiameter, double part = UsualObstacle) => wheelDiameter * part;
}
