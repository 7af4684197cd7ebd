using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>One thing drawn on a layer. Coordinates in mm, x to the right, y up.</summary>
public abstract record Entity
{
    private protected Entity(Layer layer) => Layer = layer;

    /// <summary>The layer it belongs to.</summary>
    public Layer Layer { get; }

    /// <summary>The smallest upright box around the geometry; of a text, its reserved box.</summary>
    public abstract Box2 Bounds { get; }
}

/// <summary>A closed outline of lines and arcs.</summary>
public sealed record ContourEntity(Layer Layer, Contour Contour) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Contour.Bounds;
}

/// <summary>A single line or arc.</summary>
public sealed record SegmentEntity(Layer Layer, Segment Segment) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Segment.Bounds;
}

/// <summary>Lines and arcs that follow each other, open or closed, and may run over themselves: a tool's way, a stroke of lettering.</summary>
public sealed record PathEntity(Layer Layer, ToolPath Path) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Path.Bounds;
}

/// <summary>A full circle. Radius in mm.</summary>
public sealed record CircleEntity(Layer Layer, Point2 Centre, double Radius) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => new Box2(Centre, Centre).Grown(Radius);
}

/// <summary>A single place.</summary>
public sealed record PointEntity(Layer Layer, Point2 Position) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => new(Position, Position);
}

/// <summary>Which point of a text's box its position is: along the base line, then across it.</summary>
public enum Anchor
{
    /// <summary>Left end of the base line.</summary>
    BaseLeft,

    /// <summary>Middle of the base line.</summary>
    BaseCentre,

    /// <summary>Right end of the base line.</summary>
    BaseRight,

    /// <summary>Middle between the base line and the top of the capitals, middle of the width.</summary>
    Middle,
}

/// <summary>One line of lettering. Height is that of the capitals, in mm; the angle is in degrees, anticlockwise from x.</summary>
public sealed record TextEntity(Layer Layer, Point2 Position, double Height, string Text, Anchor Anchor = Anchor.BaseLeft, double AngleDegrees = 0)
    : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Lettering.Box(this);
}

/// <summary>A filled triangle: the terminator of a dimension line.</summary>
public sealed record ArrowEntity(Layer Layer, Point2 Tip, Point2 Left, Point2 Right) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Box2.Around([Tip, Left, Right]);
}
