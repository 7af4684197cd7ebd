namespace ShopDrawings.Kernel;

/// <summary>Boards below the bottom that hide what the cabinet stands on. Lengths in mm.</summary>
internal sealed class PlinthStanding(PlinthSpec spec, CabinetSpec cabinet, CabinetFrame frame, AssemblyBuilder assembly, Faults faults)
{
    // Before feet that are screwed in and out, a board as high as they are would jam: 2 mm, common practice, no source.
    private static readonly Size Play = Size.Default(2, "plinth-play");

    /// <summary>
    /// Adds the boards. Under a raised bottom they fill the space between the sides, which hold them with screws; else they stand before the
    /// feet on the floor, as wide as the cabinet. The front one is set back, the rear one ends with the bottom.
    /// </summary>
    public void Stand()
    {
        var depth = cabinet.IsBottomUnder ? frame.BodyDepth : frame.LevelDepth;
        var thickness = spec.Board.Thickness;
        var needed = spec.SetBack + (spec.HasRear ? 2 * thickness : thickness);
        if (needed.Value >= depth.Value - Tolerance.Length)
        {
            faults.Add($"{(spec.HasRear ? "plinths" : "a plinth")} set back {faults.Print(spec.SetBack)} and {faults.Print(thickness)} thick {(spec.HasRear ? "do" : "does")} not stand under a bottom {faults.Print(depth)} deep; make “set-back” less", spec.SetBack.Source, spec.Source);
            return;
        }

        Board("plinth", spec.SetBack, Direction.Front);
        if (spec.HasRear) Board("rear-plinth", depth - thickness, Direction.Back);
    }

    private void Board(string id, Size from, Direction outside)
    {
        var isBetween = cabinet.Recess.Value > 0;
        var (x, z) = isBetween
            ? (new Stretch(frame.Thickness, frame.InnerWidth), new Stretch(Size.Zero, cabinet.Recess))
            : (new Stretch(Size.Zero, frame.Width), new Stretch(Size.Zero - cabinet.Feet!.Foot.Height, (cabinet.Feet.Foot.Height - Play).As("plinth-height")));
        if (!faults.Fill(assembly, id, spec.Board, (x, new(from, spec.Board.Thickness), z), outside, Direction.Right, [], spec.Source) || !isBetween) return;
        foreach (var side in (string[])["left-side", "right-side"]) assembly.MustJoin(side, id, cabinet.Joints.Screwed);
    }
}
