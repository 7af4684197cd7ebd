using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// What a machine does to what lies on it with one face up, in order: pins, bores tool by tool, pockets, engraving, openings, outlines; so that
/// nothing is cut loose before all within it is made. Coordinates count from the machine's origin corner, x to the right, y up, seen from
/// above; mm.
/// </summary>
/// <param name="Name">The panel's or sheet's id, with <c>_outside</c> or <c>_inside</c> where that face is the second.</param>
/// <param name="Machine">The machine.</param>
/// <param name="Panels">What lies on it.</param>
/// <param name="Sheet">The sheet they are cut from, or nothing.</param>
/// <param name="Origin">The shift from the frame of the panel or sheet to the origin corner, already in every coordinate.</param>
/// <param name="IsSecond">Whether the panel was turned over for it.</param>
/// <param name="Operations">What is done, in order.</param>
public sealed record FaceProgram(
    string Name, Machine Machine, ImmutableArray<LyingPanel> Panels, CutSheet? Sheet, Point2 Origin, bool IsSecond, ImmutableArray<MachineOperation> Operations);

/// <summary>What a machine does for a whole job.</summary>
/// <param name="Machine">The machine.</param>
/// <param name="Programs">Its programs: panel by panel, then sheet by sheet.</param>
/// <param name="Findings">What it cannot do, and what should not be done on it.</param>
public sealed record MachinePlan(Machine Machine, ImmutableArray<FaceProgram> Programs, ImmutableArray<Finding> Findings);
