using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A space between four panels, in the assembly.</summary>
/// <param name="Path">What the ids of panels in it begin with: empty, or <c>chamber/</c>.</param>
/// <param name="X">Left to right.</param>
/// <param name="Y">From its front, behind doors between the panels, to whatever is behind.</param>
/// <param name="Z">From the floor up.</param>
/// <param name="Left">The panel on the left.</param>
/// <param name="Right">The panel on the right.</param>
/// <param name="Bottom">The panel below.</param>
/// <param name="Top">The panel above.</param>
internal sealed record Space(string Path, Stretch X, Stretch Y, Stretch Z, string Left, string Right, string Bottom, string Top)
{
    /// <summary>Doors before this space, or a larger one around it; none where it is open.</summary>
    public DoorLayout? Doors { get; init; }

    /// <summary>How messages call it.</summary>
    public string Name => Path.Length == 0 ? "the cabinet" : $"bay “{Path.TrimEnd('/')}”";

    /// <summary>How far an open door stands into it on the left or the right.</summary>
    public Size Intrusion(bool isLeft) => IsHung(isLeft) ? Doors!.Spec.Hinge.Intrusion : Size.Zero;

    /// <summary>How far hinges and open doors together stand into it on the left or the right.</summary>
    public Size HingeReach(bool isLeft) => IsHung(isLeft) ? Size.Largest(Doors!.Spec.Hinge.Intrusion, Doors.Spec.Hinge.BodyReach).As("hinge-reach") : Size.Zero;

    private bool IsHung(bool isLeft) => Doors is { } doors && doors.Hangs(isLeft) && (isLeft ? doors.Opening.Left == Left : doors.Opening.Right == Right);
}

/// <summary>The stretch of the front that fronts cover, with what lies around it.</summary>
/// <param name="X">Left to right.</param>
/// <param name="Z">From the bottom up.</param>
/// <param name="Margins">Left free at its left, right, lower and upper end.</param>
internal sealed record FrontArea(Stretch X, Stretch Z, (Size Left, Size Right, Size Bottom, Size Top) Margins)
{
    /// <summary>
    /// What fronts before a space cover: an outer panel's whole edge less the reveal, half of the edge of one that the neighbour shares less half
    /// the gap, or the opening less the gap all round.
    /// </summary>
    public static FrontArea Of(Space space, CabinetFrame frame, AssemblyBuilder assembly, DoorMount mount, Size reveal, Size gap)
    {
        if (mount == DoorMount.Inset) return new(space.X, space.Z, (gap, gap, gap, gap));
        var half = (gap / 2).As("half-gap");
        (Size At, Size Margin) Side(string panel, string outer, Size outerEdge, Size middle) =>
            panel != outer ? (Middle(panel, 0), half)
            : mount == DoorMount.HalfOverlay ? (middle, half)
            : (outerEdge, reveal);
        (Size At, Size Margin) Level(string panel, string outer, Size outerFace) => panel != outer ? (Middle(panel, 2), half) : (outerFace, reveal);
        Size Middle(string panel, int axis)
        {
            var (low, high) = assembly.Find(panel)!.Extent(axis);
            return (low + (high - low) / 2).As("middle-of-panel");
        }

        var (left, right) = (Side(space.Left, "left-side", Size.Zero, frame.Thickness / 2), Side(space.Right, "right-side", frame.Width, frame.Width - frame.Thickness / 2));
        var (low, high) = (Level(space.Bottom, "bottom", frame.FrontBottom), Level(space.Top, "top", frame.Height));
        var whole = left.At == Size.Zero ? right.At : right.At - left.At;
        var height = low.At == Size.Zero ? high.At : (high.At - low.At).As("front-height");
        return new(new(left.At, whole), new(low.At, height), (left.Margin, right.Margin, low.Margin, high.Margin));
    }
}
