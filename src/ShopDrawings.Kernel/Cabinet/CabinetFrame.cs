namespace ShopDrawings.Kernel;

/// <summary>
/// The sizes every panel of a cabinet is made from, in mm: outside and inside in all three axes. The one place that decides between
/// outside, inside and door sizes. With a step, inner width, side height and side depth are whole multiples of it, and what that adds or
/// takes away goes to the outside size.
/// </summary>
internal sealed class CabinetFrame
{
    private readonly CabinetSpec spec;
    private readonly Faults faults;

    /// <summary>Works the sizes out; what cannot be built is noted.</summary>
    public CabinetFrame(CabinetSpec spec, Faults faults)
    {
        (this.spec, this.faults) = (spec, faults);
        Thickness = spec.Board.Thickness;
        BackThickness = spec.Back?.Board.Thickness ?? Size.Zero;
        GrooveWidth = spec.Back is { Fit: BackFit.Groove } back ? (back.Board.Thickness + back.GroovePlay).As("groove-width") : Size.Zero;

        (Width, InnerWidth) = AcrossWidth();
        (Height, InnerHeight) = AcrossHeight();
        SideBottom = spec.IsBottomUnder ? Thickness : Size.Zero;
        SideTop = spec.IsTopOver ? Height - Thickness : Height;
        Floor = spec.Recess + Thickness;
        (BodyDepth, Depth, ClearDepth) = AcrossDepth();
        LevelDepth = spec.Back is { Fit: BackFit.WithinSides } within ? (BodyDepth - within.Inset - BackThickness).As("depth-before-back") : BodyDepth;

        if (InnerWidth.Value <= Tolerance.Length) TooSmall(Width, "wide", 2 * Thickness);
        if (InnerHeight.Value <= Tolerance.Length) TooSmall(Height, "high", Height - InnerHeight);
        if (ClearDepth.Value <= Tolerance.Length) TooSmall(Depth, "deep", BodyDepth - ClearDepth + (Depth - BodyDepth));
    }

    /// <summary>Of the carcass board.</summary>
    public Size Thickness { get; }

    /// <summary>Of the back; nothing without one.</summary>
    public Size BackThickness { get; }

    /// <summary>Of the groove for the back.</summary>
    public Size GrooveWidth { get; }

    /// <summary>Outside, left to right.</summary>
    public Size Width { get; }

    /// <summary>Outside, bottom to top.</summary>
    public Size Height { get; }

    /// <summary>Outside, front to back, with a back behind the sides.</summary>
    public Size Depth { get; }

    /// <summary>Between the sides.</summary>
    public Size InnerWidth { get; }

    /// <summary>Between bottom and top.</summary>
    public Size InnerHeight { get; }

    /// <summary>From the front to whatever is behind: back, groove or open air.</summary>
    public Size ClearDepth { get; }

    /// <summary>Of the sides, front to back.</summary>
    public Size BodyDepth { get; }

    /// <summary>Of a top or bottom between the sides, front to back: it ends before a back that runs past it.</summary>
    public Size LevelDepth { get; }

    /// <summary>Height of the sides' lower edge.</summary>
    public Size SideBottom { get; }

    /// <summary>Height of the sides' upper edge.</summary>
    public Size SideTop { get; }

    /// <summary>Height of the bottom's inside face.</summary>
    public Size Floor { get; }

    /// <summary>Height of the lower edge of what fronts cover: the underside of the bottom.</summary>
    public Size FrontBottom => spec.Recess;

    /// <summary>Height of the top's inside face.</summary>
    public Size Ceiling => Height - Thickness;

    private (Size Outside, Size Inside) AcrossWidth()
    {
        if (spec.Width.Inside is { } given)
        {
            var inside = given.Snapped(spec.Step).As("inner-width");
            return ((inside + 2 * Thickness).As("outside-width"), inside);
        }

        var outside = spec.Width.Outside ?? FromDoors("width", d => d.Actual.Width, d => d.Module.Width, d => d.Count);
        var inner = (outside - 2 * Thickness).Snapped(spec.Step).As("inner-width");
        return (spec.Step is null ? outside : (inner + 2 * Thickness).As("outside-width"), inner);
    }

    // The side is what is cut by hand; a top over it or a bottom under it comes on top of its length.
    private (Size Outside, Size Inside) AcrossHeight()
    {
        var levels = spec.Recess + 2 * Thickness;
        if (spec.Height.Inside is { } given && spec.Step is null) return ((given + levels).As("outside-height"), given);
        var wanted = spec.Height.Inside is { } inside ? inside + levels
            : spec.Height.Outside ?? FromDoors("height", d => d.Actual.Height, d => d.Module.Height, _ => 1) + spec.Recess;
        var besides = (spec.IsTopOver ? 1 : 0) + (spec.IsBottomUnder ? 1 : 0);
        var outside = spec.Step is null ? wanted
            : besides == 0 ? wanted.Snapped(spec.Step).As("outside-height")
            : ((wanted - (double)besides * Thickness).Snapped(spec.Step) + (double)besides * Thickness).As("outside-height");
        return (outside, (outside - levels).As("inner-height"));
    }

    private (Size Body, Size Outside, Size Clear) AcrossDepth()
    {
        var isBehind = spec.Back?.Fit == BackFit.Behind;
        var behind = isBehind ? BackThickness : Size.Zero;
        var taken = spec.Back switch
        {
            null or { Fit: BackFit.Behind } => Size.Zero,
            { Fit: BackFit.Groove } groove => groove.Inset + GrooveWidth,
            { } other => other.Inset + BackThickness,
        };
        Size body;
        if (spec.Depth.Inside is { } clear) body = (clear + taken).Snapped(spec.Step).As("side-depth");
        else if (spec.Depth.Outside is { } outside) body = (outside - behind).Snapped(spec.Step);
        else
        {
            faults.Add("the cabinet has no depth: give “depth”, or a depth under “inside”", spec.Source);
            body = Size.Default(500, "unknown-depth");
        }

        var whole = isBehind ? (body + behind).As("outside-depth") : body;
        return (body, whole, taken == Size.Zero ? body : (body - taken).As("clear-depth"));
    }

    // What the doors take: as many modules, or the doors with the gaps between and around them, and of what is around them what they leave
    // uncovered.
    private Size FromDoors(string axis, Func<DoorsSpec, Size?> actual, Func<DoorsSpec, Size?> module, Func<DoorsSpec, int> count)
    {
        if (spec.Doors is { } doors)
        {
            var n = count(doors);
            if (module(doors) is { } grid) return (n == 1 ? grid : (double)n * grid).As($"outside-{axis}");
            if (actual(doors) is { } one)
            {
                var row = n == 1 ? one : (double)n * one + doors.Gap;
                var around = doors.Mount switch
                {
                    DoorMount.Inset => 2 * doors.Gap + 2 * Thickness,
                    DoorMount.HalfOverlay when axis == "width" => doors.Gap + Thickness,
                    _ => 2 * doors.Reveal,
                };
                return (row + around).As($"outside-{axis}");
            }
        }

        faults.Add($"the cabinet has no {axis}: give “{axis}”, a {axis} under “inside”, or doors with a {axis}", spec.Source);
        return Size.Default(500, $"unknown-{axis}");
    }

    private void TooSmall(Size outside, string how, Size least) => faults.Add(
        $"a carcass {faults.Print(outside)} {how} leaves nothing inside; make it more than {faults.Print(least)}{(how == "deep" && spec.Back is not null ? ", or the back's “inset” less" : "")}",
        spec.Width.Outside is { } w && how == "wide" ? w.Source : default, spec.Width.Inside is { } iw && how == "wide" ? iw.Source : default,
        spec.Height.Outside is { } h && how == "high" ? h.Source : default, spec.Depth.Outside is { } d && how == "deep" ? d.Source : default);
}
