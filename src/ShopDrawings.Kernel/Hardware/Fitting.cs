namespace ShopDrawings.Kernel;

/// <summary>Fixes a bought part to a face of a panel.</summary>
/// <param name="Id">Its name in the project, unique.</param>
/// <param name="Pattern">What it is.</param>
/// <param name="Panel">The panel it is fixed to.</param>
/// <param name="Face">The face it is fixed to.</param>
/// <param name="At">The middle of its foot on that face.</param>
/// <param name="QuarterTurns">How far it is turned anticlockwise, seen by someone who looks at the face.</param>
internal sealed record Fitting(string Id, HardwarePattern Pattern, Panel Panel, Surface Face, Position At, int QuarterTurns)
{
    /// <summary>The part in its place; it takes no room where it does not stand off the face.</summary>
    public PlacedHardware Placed =>
        new(Id, HardwareKind.Fitting, Pattern.Name, [new Mount(Panel.Id, Face, At)], Pattern.Height.Value > Tolerance.Length ? [Body] : [], []);

    /// <summary>What it writes into its panel.</summary>
    /// <exception cref="InvalidOperationException">The pattern holds a feature that no hardware needs.</exception>
    public IEnumerable<Feature> Features() => Pattern.Features.Select<Feature, Feature>(feature => feature switch
    {
        Bore { Depth: null } bore => Bore.Through(Id, Face, OnPanel(bore.At), bore.Diameter),
        Bore bore => Bore.Blind(Id, Face, OnPanel(bore.At), bore.Diameter, bore.Depth),
        CutOut cutOut => new CutOut(Id, cutOut.Outline.Mapped(OnPanel, Face == Surface.Outside), [At.X, At.Y, .. cutOut.Given]),
        Mark mark => new Mark(Id, Face, OnPanel(mark.From), mark.To is { } to ? OnPanel(to) : null),
        _ => throw new InvalidOperationException($"{feature.GetType().Name} is no feature of hardware."),
    });

    private Box3 Body
    {
        get
        {
            var (a, b) = (OnPanel(new Point2(Pattern.Length.Value / 2, Pattern.Width.Value / 2)), OnPanel(new Point2(-Pattern.Length.Value / 2, -Pattern.Width.Value / 2)));
            var height = Pattern.Height.Value;
            var (low, high) = Face == Surface.Inside ? (Panel.Thickness.Value, Panel.Thickness.Value + height) : (-height, 0);
            return Box3.Between(new Point3(a.X, a.Y, low), new Point3(b.X, b.Y, high));
        }
    }

    // Where the part's own x runs in the panel's frame, and its y. Someone who looks at the outside face sees the panel's x run to the left.
    private (Point2 X, Point2 Y) Axes
    {
        get
        {
            var x = QuarterTurns switch { 0 => new Point2(1, 0), 1 => new Point2(0, 1), 2 => new Point2(-1, 0), _ => new Point2(0, -1) };
            var y = x.Left;
            return Face == Surface.Inside ? (x, y) : (x with { X = -x.X }, y with { X = -y.X });
        }
    }

    private Point2 OnPanel(Point2 p) => At.Point + Axes.X * p.X + Axes.Y * p.Y;

    private Position OnPanel(Position p)
    {
        var (x, y) = Axes;
        static Size Signed(double sign, Size size) => sign < 0 ? -1.0 * size : size;
        return x.X != 0
            ? new Position(At.X + Signed(x.X, p.X), At.Y + Signed(y.Y, p.Y))
            : new Position(At.X + Signed(y.X, p.Y), At.Y + Signed(x.Y, p.X));
    }
}
