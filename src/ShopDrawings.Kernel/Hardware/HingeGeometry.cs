namespace ShopDrawings.Kernel;

/// <summary>Concealed cup hinges and the doors on them. Lengths in mm, masses in kg, angles in degrees, forces in N.</summary>
internal static class HingeGeometry
{
    /// <summary>
    /// How far a door covers the edge of its side: fixed distance + boring distance − plate height (hinge maker's quick-reference sheet).
    /// </summary>
    public static Size Overlay(Size fixedDistance, Size boringDistance, Size plateHeight) => (fixedDistance + boringDistance - plateHeight).As("overlay");

    /// <summary>The plate an overlay needs: fixed distance + boring distance − overlay (hinge maker's catalogue, the same relation).</summary>
    public static Size PlateHeight(Size fixedDistance, Size boringDistance, Size overlay) => (fixedDistance + boringDistance - overlay).As("plate-height");

    /// <summary>The plate a door between the sides needs: constant + boring distance + gap (hinge maker's catalogue).</summary>
    /// <param name="constant">Of the hinge's arm for inset doors, usually negative.</param>
    /// <param name="boringDistance">From the edge of the door to the edge of the cup's bore.</param>
    /// <param name="gap">Between the door's edge and the side.</param>
    public static Size PlateHeightInset(Size constant, Size boringDistance, Size gap) => (constant + boringDistance + gap).As("plate-height");

    /// <summary>From the edge of the door to the centre of the cup: the boring distance and half the cup (hinge maker's quick-reference sheet).</summary>
    public static Size CupCentre(Size boringDistance, Size cupDiameter) => (boringDistance + cupDiameter / 2).As("cup-distance");

    /// <summary>
    /// From the front edge of the side to the plate's holes behind a door between the sides: the usual set-back, the door, and how far it
    /// stands behind the front edge (common practice, no source).
    /// </summary>
    public static Size PlateSetBackInset(Size setBack, Size doorThickness, Size recess) => (setBack + doorThickness + recess).As("plate-set-back");

    /// <summary>Width of one door between the sides: the opening less the gap at both edges (derived, geometry).</summary>
    public static Size InsetWidth(Size opening, Size gap) => (opening - 2 * gap).As("door-width");

    /// <summary>Hinges a door's height asks for: ≤ 900, 1600, 2000, 2400 mm → 2, 3, 4, 5 (typical of several makers' charts, from memory).</summary>
    public static int ByHeight(double height) => Band(height, [900, 1600, 2000, 2400]);

    /// <summary>Hinges a door's mass asks for: ≤ 6, 12, 17, 22 kg → 2, 3, 4, 5 (typical of several makers' charts, from memory).</summary>
    public static int ByMass(double massKg) => Band(massKg, [6, 12, 17, 22]);

    /// <summary>
    /// Pull on the screws of the top hinge, and push on those of the lowest: the door's weight at half its width, over the distance of the two
    /// (derived, statics; the pivot is taken at the door's edge).
    /// </summary>
    /// <param name="massKg">Of the door.</param>
    /// <param name="doorWidth">Of the door.</param>
    /// <param name="spacing">Between the highest and the lowest hinge.</param>
    public static double CoupleForce(double massKg, double doorWidth, double spacing) => massKg * Gravity.Standard * (doorWidth / 2) / spacing;

    /// <summary>Least gap beside a door between the sides that turns about its back corner: √(width² + thickness²) − width (derived, geometry).</summary>
    public static double SwingGap(double doorWidth, double doorThickness) => Math.Sqrt(doorWidth * doorWidth + doorThickness * doorThickness) - doorWidth;

    /// <summary>
    /// How far a door reaches sideways beyond its hinge edge when open: width × cos(180° − angle), nothing up to 90° (derived, geometry).
    /// </summary>
    public static double SideOverhang(double doorWidth, double openingAngle) =>
        openingAngle <= 90 ? 0 : doorWidth * Math.Cos((180 - openingAngle) * Math.PI / 180);

    /// <summary>What two open doors leave of the opening for what slides out between them (derived, geometry).</summary>
    /// <param name="opening">Between the sides.</param>
    /// <param name="intrusion">How far each door stands into it; from the hinge's data sheet.</param>
    /// <param name="clearance">Kept free on each side.</param>
    public static double ClearOpening(double opening, double intrusion, double clearance) => opening - 2 * (intrusion + clearance);

    // Two up to the first limit, and one more beyond each.
    private static int Band(double value, ReadOnlySpan<double> limits)
    {
        var count = 2;
        foreach (var limit in limits)
        {
            if (value <= limit) break;
            count++;
        }

        return count;
    }
}
