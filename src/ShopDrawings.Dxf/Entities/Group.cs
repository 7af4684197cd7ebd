using System.Collections.Immutable;

namespace ShopDrawings.Dxf;

/// <summary>One attribute of an entity.</summary>
/// <param name="Code">Its group code; of a point, the code of x.</param>
/// <param name="Name">What the DXF Reference calls it.</param>
/// <param name="Type">What its value is.</param>
internal sealed record Group(int Code, string Name, GroupType Type)
{
    /// <summary>The number a reader assumes when the group is missing; it is left out then. Nothing: the group is demanded.</summary>
    public double? Default { get; init; }

    /// <summary>Whether it may be missing without having a default: its numbers are <see cref="double.NaN"/> then.</summary>
    public bool IsOptional { get; init; }

    /// <summary>Whether R12 does not know it.</summary>
    public bool IsSinceR2000 { get; init; }

    /// <summary>Of a whole number that counts: the groups that follow as many times as it says. Without the number they are missing too.</summary>
    public ImmutableArray<Group> Each { get; init; } = [];

    /// <summary>How many numbers its value takes.</summary>
    public int Numbers => Type switch
    {
        GroupType.Text or GroupType.Name => 0,
        GroupType.Point or GroupType.PlanePoint => 2,
        _ => 1,
    };
}
