using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A dimension (ISO 129-1): what it measures, and the text it shows. <see cref="DimensionGraphics"/> takes it apart for every exporter.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Text">The text shown, with its unit or rounding as the drawing states.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public abstract record Dimension(Layer Layer, string Text, double Height) : Entity(Layer)
{
    /// <summary>What the points measure: drawing mm, of an angle degrees.</summary>
    public abstract double Measured { get; }

    /// <summary>How many mm of what is drawn are one mm of the drawing: 5 in a view to the scale 1:5. What the dimension says is what it measures times this.</summary>
    public double Factor { get; init; } = 1;

    /// <summary>The practice that decides where its text stands.</summary>
    public DrawingStandard Standard { get; init; } = DrawingStandard.Iso;

    /// <inheritdoc/>
    public override Box2 Bounds => DimensionGraphics.Of(this).Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));
}

/// <summary>
/// The distance between two points along a direction, 0 degrees level or 90 upright.
/// </summary>
/// <param name="Layer">The layer.</param>
/// <param name="From">First measured point.</param>
/// <param name="To">Second measured point.</param>
/// <param name="Line">A point the dimension line runs through.</param>
/// <param name="Upright">Whether the distance is measured along y instead of x.</param>
/// <param name="Text">The text shown.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record LinearDimension(Layer Layer, Point2 From, Point2 To, Point2 Line, bool Upright, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <inheritdoc/>
    public override double Measured => Upright ? Math.Abs(To.Y - From.Y) : Math.Abs(To.X - From.X);
}

/// <summary>The true distance between two different points; the dimension line is parallel to the line between them.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="From">First measured point.</param>
/// <param name="To">Second measured point.</param>
/// <param name="Line">A point the dimension line runs through.</param>
/// <param name="Text">The text shown.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record AlignedDimension(Layer Layer, Point2 From, Point2 To, Point2 Line, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <inheritdoc/>
    public override double Measured => From.DistanceTo(To);
}

/// <summary>The radius of an arc. The text stands inside where there is room, else outside.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Centre">The arc's centre.</param>
/// <param name="OnArc">The point of the arc the arrow touches.</param>
/// <param name="Text">The text shown, with its R.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record RadiusDimension(Layer Layer, Point2 Centre, Point2 OnArc, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <inheritdoc/>
    public override double Measured => Centre.DistanceTo(OnArc);
}

/// <summary>The diameter of a circle. The text stands inside where there is room, else outside.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Centre">The circle's centre.</param>
/// <param name="OnCircle">The point of the circle beside which the text stands when there is no room inside.</param>
/// <param name="Text">The text shown, with its Ø.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record DiameterDimension(Layer Layer, Point2 Centre, Point2 OnCircle, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <summary>The point of the circle across from <see cref="OnCircle"/>.</summary>
    public Point2 Opposite => Centre * 2 - OnCircle;

    /// <inheritdoc/>
    public override double Measured => 2 * Centre.DistanceTo(OnCircle);
}

/// <summary>The angle at a vertex, anticlockwise from one point to another, more than 0 and less than 360 degrees.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Vertex">Where the sides meet.</param>
/// <param name="From">A point of the first side, not the vertex.</param>
/// <param name="To">A point of the second side, not the vertex.</param>
/// <param name="Radius">Radius in mm of the arc that serves as the dimension line.</param>
/// <param name="Text">The text shown, with its degree sign.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record AngularDimension(Layer Layer, Point2 Vertex, Point2 From, Point2 To, double Radius, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <inheritdoc/>
    public override double Measured
    {
        get
        {
            var (first, second) = (From - Vertex, To - Vertex);
            var angle = Math.Atan2(first.Cross(second), first.Dot(second)) * (180 / Math.PI);
            return angle < 0 ? angle + 360 : angle;
        }
    }

    /// <summary>The middle of the dimension line.</summary>
    public Point2 Middle
    {
        get
        {
            var (sin, cos) = Math.SinCos(Measured * (Math.PI / 360));
            var first = (From - Vertex) * (Radius / (From - Vertex).Length);
            return Vertex + first * cos + first.Left * sin;
        }
    }
}

/// <summary>The distance of a feature from an origin along one axis, written at the end of a leader.</summary>
/// <param name="Layer">The layer.</param>
/// <param name="Origin">Where counting begins.</param>
/// <param name="Feature">The measured point.</param>
/// <param name="End">The end of the leader, where the text begins.</param>
/// <param name="Upright">Whether y is measured instead of x. The leader of an x runs upright, that of a y level.</param>
/// <param name="Text">The text shown.</param>
/// <param name="Height">Height of the capitals in mm.</param>
public sealed record OrdinateDimension(Layer Layer, Point2 Origin, Point2 Feature, Point2 End, bool Upright, string Text, double Height) : Dimension(Layer, Text, Height)
{
    /// <inheritdoc/>
    public override double Measured => Upright ? Math.Abs(Feature.Y - Origin.Y) : Math.Abs(Feature.X - Origin.X);
}
