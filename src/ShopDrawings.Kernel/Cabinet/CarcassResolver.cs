namespace ShopDrawings.Kernel;

/// <summary>Works out every panel and joint of a carcass.</summary>
internal sealed class CarcassResolver
{
    private readonly Carcass carcass;
    private readonly AssemblyBuilder assembly;
    private readonly LengthStyle lengths;
    private readonly Size thickness;
    private readonly Size innerWidth;
    private readonly Size innerHeight;
    private readonly Size clearDepth;
    private readonly Size grooveWidth = Size.Zero;

    private CarcassResolver(Carcass carcass, AssemblyBuilder assembly, LengthStyle lengths)
    {
        (this.carcass, this.assembly, this.lengths) = (carcass, assembly, lengths);
        thickness = carcass.Board.Thickness;
        innerWidth = (carcass.Width - 2 * thickness).As("inner-width");
        innerHeight = (carcass.Height - 2 * thickness).As("inner-height");
        clearDepth = carcass.Depth;
        if (carcass.Back is not { } back) return;
        grooveWidth = (back.Board.Thickness + back.GroovePlay).As("groove-width");
        clearDepth = (carcass.Depth - back.Inset - (back.Fit == BackFit.Groove ? grooveWidth : back.Board.Thickness)).As("clear-depth");
    }

    /// <summary>Adds the carcass to an assembly.</summary>
    /// <param name="carcass">The carcass.</param>
    /// <param name="assembly">Where its panels and joints go.</param>
    /// <param name="lengths">How messages print lengths.</param>
    /// <returns>What cannot be built, each with the size to change; then nothing was added.</returns>
    public static IReadOnlyList<(SourceSpan Source, string Message)> Resolve(Carcass carcass, AssemblyBuilder assembly, LengthStyle lengths)
    {
        var resolver = new CarcassResolver(carcass, assembly, lengths);
        var faults = resolver.Faults().ToList();
        if (faults.Count == 0) resolver.Build();
        return faults;
    }

    private IEnumerable<(SourceSpan Source, string Message)> Faults()
    {
        foreach (var (size, inner, what) in new[] { (carcass.Width, innerWidth, "width"), (carcass.Height, innerHeight, "height") })
            if (inner.Value <= Tolerance.Length)
                yield return (size.Source, $"a carcass {Print(size)} in {what} leaves nothing between two panels of {Print(thickness)}; make it more than {Print(2 * thickness)}");
        if (clearDepth.Value <= Tolerance.Length)
            yield return (carcass.Depth.Source, $"a carcass {Print(carcass.Depth)} deep leaves nothing before its back; make it more than {Print(carcass.Depth - clearDepth)}, or the back's “inset” less");
        if (carcass.Back is { Fit: BackFit.Groove } back && back.GrooveDepth.Value >= thickness.Value - Tolerance.Length)
            yield return (back.GrooveDepth.Source, $"a groove {Print(back.GrooveDepth)} deep cuts a board of {Print(thickness)} in two; half the thickness is usual");
        if (carcass.Back is { Fit: BackFit.Groove } loose && loose.GrooveDepth.Value - loose.EndPlay.Value <= Tolerance.Length)
            yield return (loose.EndPlay.Source == default ? loose.GrooveDepth.Source : loose.EndPlay.Source,
                $"a groove {Print(loose.GrooveDepth)} deep does not hold a back that ends {Print(loose.EndPlay)} before its bottom; make “groove-depth” more or “end-play” less");

        foreach (var shelf in carcass.Shelves)
        {
            if (shelf.Top is { } top && (top.Value - shelf.Board.Thickness.Value < thickness.Value - Tolerance.Length || top.Value > carcass.Height.Value - thickness.Value + Tolerance.Length))
                yield return (top.Source, $"a shelf with its upper face at {Print(top)} is not inside the carcass; it can stand from {Print(thickness + shelf.Board.Thickness)} to {Print(carcass.Height - thickness)}");
            if (shelf.FrontInset.Value >= clearDepth.Value - Tolerance.Length)
                yield return (shelf.FrontInset.Source, $"a shelf {Print(shelf.FrontInset)} behind the front has no depth left; the carcass is {Print(clearDepth)} deep before its back");
        }

        var even = carcass.Shelves.Where(s => s.Top is null).ToList();
        if (even.Count > 0 && innerHeight.Value <= even.Sum(s => s.Board.Thickness.Value) + Tolerance.Length)
            yield return (even[0].Source, $"{(even.Count == 1 ? "a shelf does" : $"{even.Count} shelves do")} not fit into a carcass {Print(innerHeight)} high inside");
    }

    private void Build()
    {
        var (width, height, depth) = (carcass.Width, carcass.Height, carcass.Depth);
        Stretch wholeDepth = new(Size.Zero, depth), wholeHeight = new(Size.Zero, height), between = new(thickness, innerWidth);
        var board = carcass.Board;
        Add("left-side", board, new(Size.Zero, thickness), wholeDepth, wholeHeight, Direction.Left, Direction.Top);
        Add("right-side", board, new(width - thickness, thickness), wholeDepth, wholeHeight, Direction.Right, Direction.Top);
        Add("bottom", board, between, wholeDepth, new(Size.Zero, thickness), Direction.Bottom, Direction.Right);
        Add("top", board, between, wholeDepth, new(height - thickness, thickness), Direction.Top, Direction.Right);
        Shelves();
        if (carcass.Back is { Fit: BackFit.Groove } grooved) BackInGroove(grooved);
        if (carcass.Back is { Fit: BackFit.Between } flush) BackBetween(flush);

        foreach (var level in new[] { "bottom", "top" }.Concat(carcass.Shelves.Select(s => s.Id)))
        {
            Screw("left-side", level);
            Screw("right-side", level);
        }

        if (carcass.Back?.Fit != BackFit.Between) return;
        foreach (var around in new[] { "left-side", "right-side", "bottom", "top" }) Screw(around, "back");
    }

    private void Shelves()
    {
        var even = carcass.Shelves.Where(s => s.Top is null).ToList();
        var filled = even.Aggregate(Size.Zero, (sum, s) => sum + s.Board.Thickness);
        var clear = even.Count == 0 ? Size.Zero : ((innerHeight - filled) / (even.Count + 1)).As("clear-height");
        var floor = thickness;
        foreach (var shelf in carcass.Shelves)
        {
            var underside = shelf.Top is { } top ? top - shelf.Board.Thickness : floor + clear;
            if (shelf.Top is null) floor = underside + shelf.Board.Thickness;
            var deep = shelf.FrontInset == Size.Zero ? clearDepth : clearDepth - shelf.FrontInset;
            Add(shelf.Id, shelf.Board, new(thickness, innerWidth), new(shelf.FrontInset, deep), new(underside, shelf.Board.Thickness), Direction.Bottom, Direction.Right);
        }
    }

    private void BackBetween(CarcassBack back)
    {
        var face = carcass.Depth - back.Inset - back.Board.Thickness;
        Add("back", back.Board, new(thickness, innerWidth), new(face, back.Board.Thickness), new(thickness, innerHeight), Direction.Back, Direction.Top);
    }

    // The grooves of the sides stop where the back ends, so that nothing shows from above or below; those of top and bottom run through.
    private void BackInGroove(CarcassBack back)
    {
        var tongue = (back.GrooveDepth - back.EndPlay).As("depth-in-groove");
        var front = carcass.Depth - back.Inset - grooveWidth;
        Add("back", back.Board,
            new(thickness - tongue, innerWidth + 2 * tongue), new(front + back.GroovePlay / 2, back.Board.Thickness), new(thickness - tongue, innerHeight + 2 * tongue),
            Direction.Back, Direction.Top);

        var middle = carcass.Depth - back.Inset - grooveWidth / 2;
        var (low, high) = (thickness - back.GrooveDepth, carcass.Height - thickness + back.GrooveDepth);
        foreach (var side in new[] { "left-side", "right-side" })
            Groove(side, new(Size.Zero, middle, low), new(Size.Zero, middle, high), back.GrooveDepth);
        foreach (var level in new[] { "bottom", "top" })
            Groove(level, new(thickness, middle, Size.Zero), new(thickness + innerWidth, middle, Size.Zero), back.GrooveDepth);
    }

    private void Groove(string panelId, SizePoint from, SizePoint to, Size depth)
    {
        var panel = assembly.Find(panelId)!;
        assembly.Write(panelId, Kernel.Groove.Along("back", Surface.Inside, panel.OnFace(from), panel.OnFace(to), grooveWidth, depth));
    }

    private void Add(string id, Board board, Stretch x, Stretch y, Stretch z, Direction outside, Direction grain) =>
        assembly.Add(PanelPlacing.Fill(id, board, x, y, z, outside, grain));

    private void Screw(string through, string receiving)
    {
        if (!assembly.Screw(through, receiving, carcass.Screw, carcass.Row)) throw new InvalidOperationException($"{through} does not touch {receiving}.");
    }

    private string Print(Size size) => lengths.Describe(size.Value);
}
