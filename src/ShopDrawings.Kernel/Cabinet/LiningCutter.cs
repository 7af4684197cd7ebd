namespace ShopDrawings.Kernel;

/// <summary>A sheet against a face, before what stands in its way is cut out of it.</summary>
/// <param name="Id">Its panel's id; pieces add <c>-1</c>, <c>-2</c> … to it.</param>
/// <param name="Board">What it is cut from.</param>
/// <param name="Block">The block of the assembly it would fill.</param>
/// <param name="Outside">Where its outside face looks: towards what it lies against.</param>
/// <param name="Grain">Where its length runs.</param>
/// <param name="Behind">Id of the panel it lies against.</param>
/// <param name="Joint">The screws that hold it, or nothing.</param>
/// <param name="Source">Where the user asked for it.</param>
internal sealed record LiningSheet(
    string Id, Board Board, (Stretch X, Stretch Y, Stretch Z) Block, Direction Outside, Direction Grain, string Behind, JointRule? Joint, SourceSpan Source);

/// <summary>Cuts a sheet so that it clears what stands in its block, once all of that is in its place. Lengths in mm.</summary>
internal sealed class LiningCutter(AssemblyBuilder assembly, Faults faults)
{
    /// <summary>No part of a lining is narrower, beside an opening or between two: common practice, no source.</summary>
    public const double LeastStrip = 12;

    /// <summary>A piece that is less in either direction is left out: common practice, no source.</summary>
    public const double LeastPiece = 20;

    // Left free beside a panel and beside hardware (common practice, no source).
    private static readonly Size BesidePanel = Size.Default(1, "lining-beside-panel");
    private static readonly Size BesideHardware = Size.Default(2, "lining-beside-hardware");

    /// <summary>
    /// Adds what is left of a sheet: one panel with its id, or numbered pieces from the bottom up and from the left. Notes a fault where
    /// nothing is left. What slides is no reason to cut, since what it carries needs the same room: a check says where a sheet is in its way.
    /// </summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="openings">More blocks of the assembly to keep clear as hardware is, each with the name of what needs it.</param>
    /// <returns>The ids of its panels.</returns>
    public IReadOnlyList<string> Cut(LiningSheet sheet, params IEnumerable<(string Name, Box3 Box)> openings)
    {
        var plan = new LiningPlan(sheet, Shadows(sheet, openings));
        var pieces = plan.Pieces().ToList();
        if (pieces.Count == 0) faults.Add($"what stands in its way leaves nothing of {sheet.Id}; leave that face out of the lining", sheet.Source);
        var ids = new List<string>();
        foreach (var piece in pieces)
        {
            var id = pieces.Count == 1 ? sheet.Id : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{sheet.Id}-{ids.Count + 1}");
            if (!faults.Fill(assembly, id, sheet.Board, plan.Block(piece), sheet.Outside, sheet.Grain, [], sheet.Source)) break;
            var panel = assembly.Find(id)!;
            if (piece.Outline.Segments.Length > 4) assembly.Reshape(id, plan.InFrame(panel, piece.Outline));
            assembly.Write(id, piece.Holes.Select(hole => plan.Opening(panel, hole)));
            if (sheet.Joint is { } joint && piece.Outline.Segments.Length == 4 && assembly.CanJoinFaces(id, sheet.Behind)) assembly.JoinFaces(id, sheet.Behind, joint);
            assembly.Linings.Add(id);
            ids.Add(id);
        }

        return ids;
    }

    // What stands in the block, with the room around it.
    private List<LiningPlan.Shadow> Shadows(LiningSheet sheet, IEnumerable<(string Name, Box3 Box)> openings)
    {
        var ends = new[] { sheet.Block.X, sheet.Block.Y, sheet.Block.Z };
        var block = new Box3(
            new Point3(ends[0].From.Value, ends[1].From.Value, ends[2].From.Value),
            new Point3((ends[0].From + ends[0].Extent).Value, (ends[1].From + ends[1].Extent).Value, (ends[2].From + ends[2].Extent).Value));
        var fixedTo = assembly.Hardware.Select(h => (Piece: h, Frame: assembly.Find(h.Mounts[0].Panel)!.Placement)).Where(h => h.Frame is not null).ToList();
        var sliding = assembly.Motions.OfType<Travel>().SelectMany(m => m.Panels).ToHashSet();
        (Size, Size) Beside(Panel panel, int axis)
        {
            var (from, to) = panel.Extent(axis);
            return (from - BesidePanel, to + BesidePanel);
        }

        (Size, Size) BesideBox(Box3 box, int axis) =>
            (Size.Constant(box.Min.Along(axis)) - BesideHardware, Size.Constant(box.Max.Along(axis)) + BesideHardware);

        var panels =
            from panel in assembly.Panels
            where panel.Placement is not null && !sliding.Contains(panel.Id)
            let box = panel.Placement!.ToAssembly(panel.Box)
            where box.Intersection(block) is not null
            select new LiningPlan.Shadow(panel.Id, axis => Beside(panel, axis));
        var hardware =
            from piece in fixedTo.SelectMany(h => h.Piece.Volumes.Select(v => (Name: h.Piece.Id, Box: h.Frame!.ToAssembly(v)))).Concat(openings)
            where piece.Box.Intersection(block) is not null
            select new LiningPlan.Shadow(piece.Name, axis => BesideBox(piece.Box, axis));
        return [.. panels, .. hardware];
    }
}
