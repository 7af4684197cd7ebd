namespace ShopDrawings.Kernel;

/// <summary>
/// Where a panel stands in the assembly: its origin and the directions of its axes, all square to the assembly's. Right-handed: a panel
/// is turned, never mirrored.
/// </summary>
public sealed class Placement
{
    private Placement(Size x, Size y, Size z, Direction alongLength, Direction alongWidth, Direction inwards)
    {
        (X, Y, Z) = (x, y, z);
        (AlongLength, AlongWidth, Inwards) = (alongLength, alongWidth, inwards);
        Origin = new Point3(x.Value, y.Value, z.Value);
    }

    /// <summary>Origin of the panel's frame: x to the right, in mm.</summary>
    public Size X { get; }

    /// <summary>Origin of the panel's frame: y to the back, in mm.</summary>
    public Size Y { get; }

    /// <summary>Origin of the panel's frame: z up, in mm.</summary>
    public Size Z { get; }

    /// <summary>Origin of the panel's frame in mm.</summary>
    public Point3 Origin { get; }

    /// <summary>Where the panel's x axis points, from 0 to its length.</summary>
    public Direction AlongLength { get; }

    /// <summary>Where the panel's y axis points, from 0 to its width.</summary>
    public Direction AlongWidth { get; }

    /// <summary>Where the panel's z axis points, from the outside face to the inside face.</summary>
    public Direction Inwards { get; }

    /// <summary>A placement by its origin, the direction of the length, and the direction the outside face looks.</summary>
    /// <exception cref="ArgumentException">The two directions lie on one axis.</exception>
    public static Placement Facing(Size x, Size y, Size z, Direction outside, Direction alongLength)
    {
        if (outside.Axis() == alongLength.Axis()) throw new ArgumentException("A panel's length lies in its face.", nameof(alongLength));
        var inwards = outside.Opposite();
        return new Placement(x, y, z, alongLength, Directions.Of(inwards.Vector().Cross(alongLength.Vector())), inwards);
    }

    /// <summary>The assembly point of a point in the panel's frame.</summary>
    public Point3 ToAssembly(Point3 panelPoint) => Origin + DirectionToAssembly(panelPoint);

    /// <summary>The assembly vector of a vector in the panel's frame.</summary>
    public Point3 DirectionToAssembly(Point3 vector) =>
        AlongLength.Vector() * vector.X + AlongWidth.Vector() * vector.Y + Inwards.Vector() * vector.Z;

    /// <summary>The panel's frame point of an assembly point.</summary>
    public Point3 ToPanel(Point3 assemblyPoint)
    {
        var from = assemblyPoint - Origin;
        return new Point3(from.Dot(AlongLength.Vector()), from.Dot(AlongWidth.Vector()), from.Dot(Inwards.Vector()));
    }

    /// <summary>The assembly box of a box in the panel's frame.</summary>
    public Box3 ToAssembly(Box3 panelBox) => Box3.Between(ToAssembly(panelBox.Min), ToAssembly(panelBox.Max));
}
