namespace ShopDrawings.Kernel;

/// <summary>Finished panels over the top, side by side where there are two. Lengths in mm.</summary>
internal sealed class AppliedTop(AppliedTopSpec spec, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    /// <summary>
    /// Adds the panels, each screwed from beneath on the part of the top it lies on. Pieces bought in a size stand over as they must: equally at
    /// both sides of the cabinet, or from their joint line outwards.
    /// </summary>
    public void Lay()
    {
        var (front, sides, back) = spec.Overhang;
        var joint = spec.JointLine ?? (frame.Width / 2).As("joint-line");
        if (spec.JointLine is not null && (joint.Value <= Tolerance.Length || joint.Value >= frame.Width.Value - Tolerance.Length))
        {
            faults.Add($"a joint line {faults.Print(joint)} from the left does not lie on a cabinet {faults.Print(frame.Width)} wide; make it less, or leave it out for the middle", joint.Source);
            return;
        }

        Stretch y = new(Size.Zero - front, spec.Depth ?? frame.Depth + front + back);
        if (spec.IsInTwo)
        {
            Piece("applied-top-1", spec.Width is { } left ? new(joint - left, left) : new(Size.Zero - sides, (joint + sides).As("left-piece")), y);
            Piece("applied-top-2", new(joint, spec.Width ?? (frame.Width - joint + sides).As("right-piece")), y);
        }
        else Piece("applied-top", spec.Width is { } width ? new((frame.Width - width) / 2, width) : new(Size.Zero - sides, frame.Width + 2 * sides), y);

        Covers(y);
    }

    private void Piece(string id, Stretch x, Stretch y)
    {
        if (!faults.Fill(assembly, id, spec.Board, (x, y, new(frame.Height, spec.Board.Thickness)), Direction.Top, Direction.Right, [], spec.Source)) return;
        if (JointWriter.LieOnEachOther(assembly.Find("top")!, assembly.Find(id)!)) assembly.JoinFaces("top", id, spec.Joint);
    }

    // A bought piece may be smaller than the carcass.
    private void Covers(Stretch y)
    {
        string[] ids = spec.IsInTwo ? ["applied-top-1", "applied-top-2"] : ["applied-top"];
        if (faults.All.Count > 0) return;
        var (first, last) = (assembly.Find(ids[0])!.Extent(0).From, assembly.Find(ids[^1])!.Extent(0).To);
        var rear = y.From + y.Extent;
        (string Where, double Short)[] open =
        [
            ("left", first.Value), ("right", frame.Width.Value - last.Value), ("back", frame.Depth.Value - rear.Value),
        ];
        var missing = open.Where(o => o.Short > Tolerance.Length).ToList();
        if (missing.Count == 0) return;
        assembly.Misfit(
            ["top", .. ids],
            $"{string.Join(" and ", ids)}, {faults.Print(last - first)} × {faults.Print(y.Extent)}, {(spec.IsInTwo ? "leave" : "leaves")} {string.Join(" and ", missing.Select(o => $"{faults.Print(Size.Constant(o.Short))} at the {o.Where}"))} of a carcass {faults.Print(frame.Width)} × {faults.Print(frame.Depth)} open",
            [.. missing.Select(o => new NamedNumber($"open at the {o.Where}", o.Short, "mm"))],
            "take larger pieces, or make the cabinet or the overhang at the front smaller", "derived (geometry)");
    }
}
