using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>How some panels move from where they stand, closed, to open.</summary>
/// <param name="Id">The door, shelf or drawer that moves.</param>
/// <param name="Panels">Everything that moves with it.</param>
public abstract record Motion(string Id, ImmutableArray<string> Panels);

/// <summary>Straight out and back.</summary>
/// <param name="Id">The shelf or drawer.</param>
/// <param name="Panels">Everything that moves with it.</param>
/// <param name="Towards">Where it opens to.</param>
/// <param name="Distance">How far, in mm.</param>
public sealed record Travel(string Id, ImmutableArray<string> Panels, Direction Towards, Size Distance) : Motion(Id, Panels)
{
    /// <summary>The block that a block of the assembly passes through from closed to open.</summary>
    internal Box3 Swept(Box3 box)
    {
        var by = Towards.Vector() * Distance.Value;
        return box.Union(new Box3(box.Min + by, box.Max + by));
    }
}

/// <summary>A door that turns about an upright axis, roughly that of its hinges: the door's outer edge on the hinge side.</summary>
/// <param name="Id">The door.</param>
/// <param name="Panels">Everything that turns with it.</param>
/// <param name="X">The axis, from the left, in mm.</param>
/// <param name="Y">The axis, from the front, in mm.</param>
/// <param name="IsLeft">Whether it hangs on the left.</param>
/// <param name="Degrees">How far it opens.</param>
public sealed record Swing(string Id, ImmutableArray<string> Panels, Size X, Size Y, bool IsLeft, double Degrees) : Motion(Id, Panels);
