namespace ShopDrawings.Kernel;

/// <summary>Fixes a part of the user's own to a face of a panel.</summary>
/// <param name="Id">Its name in the project, unique.</param>
/// <param name="Pattern">What it is.</param>
/// <param name="Panel">The panel it is fixed to.</param>
/// <param name="Face">The face it is fixed to.</param>
/// <param name="At">The middle of its foot on that face.</param>
/// <param name="QuarterTurns">How far it is turned anticlockwise, seen by someone who looks at the face.</param>
internal sealed record Fitting(string Id, HardwarePattern Pattern, Panel Panel, Surface Face, Position At, int QuarterTurns)
{
    /// <summary>The part in its place.</summary>
    public PlacedHardware Placed => new(Id, HardwareKind.Fitting, Pattern.Name, [new Mount(Panel.Id, Face, At)], [Body], []);

    /// <summary>The holes it writes into its panel.</summary>
    public IEnumerable<Bore> Bores()
    {
        foreach (var bore in Pattern.Bores)
        {
            var at = OnPanel(bore.At);
            yield return bore.Depth is null
                ? Bore.Through(Id, Face, at, bore.Diameter)
                : Bore.Blind(Id, Face, at, bore.Diameter, bore.Depth);
        }
    }

    private Box3 Body
    {
        get
        {
            var half = new Point2(Pattern.Length.Value / 2, Pattern.Width.Value / 2);
            if (QuarterTurns % 2 == 1) half = new Point2(half.Y, half.X);
            var height = Pattern.Height.Value;
            var (low, high) = Face == Surface.Inside ? (Panel.Thickness.Value, Panel.Thickness.Value + height) : (-height, 0);
            var at = At.Point;
            return Box3.Between(new Point3(at.X - half.X, at.Y - half.Y, low), new Point3(at.X + half.X, at.Y + half.Y, high));
        }
    }

    private Position OnPanel(Position p)
    {
        var (x, y) = QuarterTurns switch
        {
            0 => (p.X, p.Y),
            1 => (-1.0 * p.Y, p.X),
            2 => (-1.0 * p.X, -1.0 * p.Y),
            _ => (p.Y, -1.0 * p.X),
        };
        // Someone who looks at the outside face sees the panel's x run to the left.
        return new Position(At.X + (Face == Surface.Outside ? -1.0 * x : x), At.Y + y);
    }
}
