using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// What a machine does to what lies on it with one face up, in order: pins, bores tool by tool, pockets, engraving, openings, outlines; so that
/// nothing is cut loose before all within it is made. Coordinates count from the machine's origin corner, x to the right, y up, seen from
/// above; mm.
/// </summary>
/// <param name="Name">The panel's or sheet's id; with <c>_outside</c> or <c>_inside</c> where that face is the second, after the panel's id.</param>
/// <param name="Machine">The machine.</param>
/// <param name="Panels">What lies on it.</param>
/// <param name="Sheet">The sheet they are cut from, or nothing.</param>
/// <param name="Origin">The lower left corner of the sheet, from the origin corner.</param>
/// <param name="IsSecond">Whether the panel was turned over for it.</param>
/// <param name="Pins">The bores of the pins the panel is turned over on, made in the first setting.</param>
/// <param name="Operations">What is done, in order.</param>
public sealed record FaceProgram(
    string Name, Machine Machine, ImmutableArray<LyingPanel> Panels, CutSheet? Sheet, Point2 Origin, bool IsSecond, ImmutableArray<DrillOperation> Pins,
    ImmutableArray<MachineOperation> Operations);

/// <summary>What a machine does for a whole job.</summary>
/// <param name="Machine">The machine.</param>
/// <param name="Programs">Its programs: panel by panel, then sheet by sheet.</param>
/// <param name="Findings">What it cannot do, and what should not be done on it.</param>
public sealed record MachinePlan(Machine Machine, ImmutableArray<FaceProgram> Programs, ImmutableArray<Finding> Findings)
{
    /// <summary>Which sheets get no file since a panel on them must not be cut.</summary>
    /// <param name="withheld">Ids of the panels that must not be cut.</param>
    public IEnumerable<Finding> Withholding(ImmutableArray<string> withheld) =>
        from program in Programs
        where program is { Sheet: not null, IsSecond: false }
        let held = program.Panels.Select(p => p.Panel.Id).Where(withheld.Contains).ToList()
        where held.Count > 0
        select new Finding(
            "sheet-fits", Severity.Note, [], $"{Machine.Name}: sheet {program.Name} gets no file, since {string.Join(", ", held)} must not be cut", [], "derived (geometry)",
            "mend what is wrong with them, or place them on another sheet", null);
}
