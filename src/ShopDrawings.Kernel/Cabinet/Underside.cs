namespace ShopDrawings.Kernel;

/// <summary>The part of a bottom's outside face that lies free between whatever goes down beside it. Assembly coordinates, in mm.</summary>
/// <param name="X">From left to right.</param>
/// <param name="Y">From front to back.</param>
/// <param name="IsWalledAtSides">Whether the sides hang down beside it.</param>
/// <param name="IsWalledInFront">Whether a plinth stands before it.</param>
/// <param name="IsWalledBehind">Whether a back or a plinth goes down behind it.</param>
internal sealed record Underside(Stretch X, Stretch Y, bool IsWalledAtSides, bool IsWalledInFront, bool IsWalledBehind)
{
    /// <summary>That of a cabinet.</summary>
    public static Underside Of(CabinetSpec spec, CabinetFrame frame)
    {
        var hangsDown = spec.Recess.Value > 0;
        var (left, width) = spec.IsBottomUnder ? (Size.Zero, frame.Width) : (frame.Thickness, frame.InnerWidth);
        var front = spec.Plinth is { } plinth ? plinth.SetBack + plinth.Board.Thickness : Size.Zero;
        var depth = spec.IsBottomUnder ? frame.BodyDepth : frame.LevelDepth;
        var rear = spec.Plinth is { HasRear: true } both ? depth - both.Board.Thickness : depth;
        return new(new(left, width), new(front, rear - front), hangsDown, spec.Plinth is not null,
            spec.Plinth is { HasRear: true } || (hangsDown && spec.Back?.Fit is BackFit.WithinSides or BackFit.Behind));
    }
}
