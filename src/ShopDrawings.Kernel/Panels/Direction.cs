namespace ShopDrawings.Kernel;

/// <summary>A direction in assembly space, seen by someone who stands before the cabinet.</summary>
public enum Direction
{
    /// <summary>Against x.</summary>
    Left,

    /// <summary>Along x.</summary>
    Right,

    /// <summary>Against y, towards the viewer.</summary>
    Front,

    /// <summary>Along y, away from the viewer.</summary>
    Back,

    /// <summary>Against z, down.</summary>
    Bottom,

    /// <summary>Along z, up.</summary>
    Top,
}

/// <summary>Arithmetic of directions.</summary>
public static class Directions
{
    /// <summary>The vector of length 1.</summary>
    public static Point3 Vector(this Direction direction) => direction switch
    {
        Direction.Left => new(-1, 0, 0),
        Direction.Right => new(1, 0, 0),
        Direction.Front => new(0, -1, 0),
        Direction.Back => new(0, 1, 0),
        Direction.Bottom => new(0, 0, -1),
        Direction.Top => new(0, 0, 1),
        _ => throw new ArgumentOutOfRangeException(nameof(direction)),
    };

    /// <summary>The opposite direction.</summary>
    public static Direction Opposite(this Direction direction) => (Direction)((int)direction ^ 1);

    /// <summary>0 for left and right, 1 for front and back, 2 for bottom and top.</summary>
    public static int Axis(this Direction direction) => (int)direction / 2;

    /// <summary>Whether it points along its axis, not against it.</summary>
    public static bool IsPositive(this Direction direction) => ((int)direction & 1) == 1;

    /// <summary>The word a maker uses, in lower case: <c>left</c>.</summary>
    public static string Word(this Direction direction) => direction.ToString().ToLowerInvariant();

    /// <summary>The direction of a vector along an axis.</summary>
    internal static Direction Of(Point3 vector) => Enum.GetValues<Direction>().MaxBy(d => d.Vector().Dot(vector));

    /// <summary>A coordinate of a point: 0 x, 1 y, 2 z.</summary>
    internal static double Along(this Point3 point, int axis) => axis switch { 0 => point.X, 1 => point.Y, _ => point.Z };
}
