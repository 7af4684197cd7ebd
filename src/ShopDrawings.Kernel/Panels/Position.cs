namespace ShopDrawings.Kernel;

/// <summary>A place on a surface of a panel, each coordinate with its derivation, in mm.</summary>
public readonly record struct Position(Size X, Size Y)
{
    /// <summary>The numbers alone.</summary>
    public Point2 Point => new(X.Value, Y.Value);
}
