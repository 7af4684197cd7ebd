using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Something cut, drilled or marked in one panel.</summary>
public abstract record Feature
{
    private protected Feature(string origin) => Origin = origin;

    /// <summary>Who wrote it: <c>panel</c>, or the id of the joint or the piece of hardware.</summary>
    public string Origin { get; }

    /// <summary>Every number it is made of, with its derivation.</summary>
    public abstract ImmutableArray<Size> Sizes { get; }
}
