using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Where the doors before a space stand and what they take of it, before anything in it is known. Lengths in mm.</summary>
internal sealed class DoorLayout
{
    // Closed doors stand off the carcass by the thickness of a buffer (common practice, no source).
    internal static readonly Size Buffer = Size.Default(2, "buffer");

    // Between a closed door and what stands behind it (common practice, no source).
    private static readonly Size BehindDoor = Size.Default(3, "behind-door");

    /// <summary>Lays out the doors; what cannot be built is noted.</summary>
    public DoorLayout(DoorsSpec doors, Space opening, CabinetFrame frame, AssemblyBuilder assembly, Size? step, Faults faults)
    {
        (Spec, Opening) = (doors, opening);
        var area = FrontArea.Of(opening, frame, assembly, doors.Mount, doors.Reveal, doors.Gap);
        (Width, var left, Gap) = AcrossWidth(area, step);
        (Height, var low) = AcrossHeight(area, step);
        Left = area.X.From == Size.Zero ? left : area.X.From + left;
        Bottom = area.Z.From + low;
        Refuse(area, left, low, faults);
    }

    /// <summary>What the user asked for.</summary>
    public DoorsSpec Spec { get; }

    /// <summary>The space they close.</summary>
    public Space Opening { get; }

    /// <summary>Of one door.</summary>
    public Size Width { get; }

    /// <summary>Of one door.</summary>
    public Size Height { get; }

    /// <summary>Between two doors.</summary>
    public Size Gap { get; }

    /// <summary>Left edge of the first door.</summary>
    public Size Left { get; }

    /// <summary>Lower edge of the doors.</summary>
    public Size Bottom { get; }

    /// <summary>Front to back.</summary>
    public Stretch Depth => new(
        Spec.Mount == DoorMount.Inset ? Spec.Recess : Size.Zero - (Spec.Gasket ?? Buffer) - Spec.Board.Thickness, Spec.Board.Thickness);

    /// <summary>Where their backs are.</summary>
    public Size Back => Spec.Mount == DoorMount.Inset ? Spec.Recess == Size.Zero ? Spec.Board.Thickness : Spec.Recess + Spec.Board.Thickness : Size.Zero - (Spec.Gasket ?? Buffer);

    /// <summary>Where what is in the space may begin: behind the doors and what is fixed to their backs, or at the front.</summary>
    public Size Behind
    {
        get
        {
            var thickest = new[] { Spec.Lining?.Thickness, Spec.Strip?.Board.Thickness }.OfType<Size>().MaxBy(t => t.Value);
            var back = thickest is null ? Back : Back + thickest;
            return back.Value + BehindDoor.Value > 0 && (Spec.Mount == DoorMount.Inset || thickest is not null) ? (back + BehindDoor).As("behind-doors") : Size.Zero;
        }
    }

    /// <summary>Whether a door hangs on the left, or on the right.</summary>
    public bool Hangs(bool isLeft) => Spec.Hanging == Hanging.Pair || (Spec.Hanging == Hanging.Left) == isLeft;

    /// <summary>The doors: their ids, their left edges, and whether each hangs on the left.</summary>
    public IEnumerable<(string Id, Size X, bool HangsLeft)> Doors
    {
        get
        {
            if (Spec.Hanging != Hanging.Pair) return [($"{Opening.Path}door", Left, Spec.Hanging == Hanging.Left)];
            return [($"{Opening.Path}left-door", Left, true), ($"{Opening.Path}right-door", Left + Width + Gap, false)];
        }
    }

    /// <summary>The heights that hinges at given places take on a side, where the doors come bored; none for doors bored here.</summary>
    public IEnumerable<(double Low, double High)> FixedHinges
    {
        get
        {
            var half = Spec.Hinge.BodyHeight.Value / 2;
            return Spec.Cups.Select(c => (Low: Bottom.Value + c.Value - half, High: Bottom.Value + c.Value + half));
        }
    }

    // Doors of a given size are spread evenly; doors without one fill what margins and gap leave.
    private (Size Width, Size Margin, Size Gap) AcrossWidth(FrontArea area, Size? step)
    {
        var n = Spec.Count;
        var gap = n == 1 ? Size.Zero : Spec.Gap;
        if (Spec.Module.Width is { } module)
        {
            var actual = Spec.Actual.Width ?? module - (n == 1 ? 2 * Spec.Reveal : Spec.Gap);
            var share = ((module - actual) / 2).As("door-reveal");
            var outer = ((area.X.Extent - (double)n * module) / 2 + share).As("outer-reveal");
            return (actual, outer, n == 1 ? Size.Zero : (2 * share).As("centre-gap"));
        }

        if (Spec.Actual.Width is { } given) return (given, ((area.X.Extent - (double)n * given - gap) / 2).As("outer-reveal"), gap);
        var (left, right) = (area.Margins.Left, area.Margins.Right);
        var free = area.X.Extent - (left == right ? 2 * left : left + right) - gap;
        var width = (n == 1 ? free : free / n).SnappedDown(step).As("door-width");
        return (width, step is null ? left : ((area.X.Extent - (double)n * width - gap + left - right) / 2).As("outer-reveal"), gap);
    }

    private (Size Height, Size Margin) AcrossHeight(FrontArea area, Size? step)
    {
        if (Spec.Actual.Height is { } given) return (given, ((area.Z.Extent - given) / 2).As("end-reveal"));
        if (Spec.Module.Height is { } module) return ((module - 2 * Spec.Reveal).As("door-height"), ((area.Z.Extent - module) / 2 + Spec.Reveal).As("end-reveal"));
        var (low, high) = (area.Margins.Bottom, area.Margins.Top);
        var height = (area.Z.Extent - (low == high ? 2 * low : low + high)).SnappedDown(step).As("door-height");
        return (height, step is null ? low : ((area.Z.Extent - height + low - high) / 2).As("end-reveal"));
    }

    private void Refuse(FrontArea area, Size left, Size low, Faults faults)
    {
        var one = Spec.Count == 2 ? "two doors are" : "a door is";
        foreach (var (size, what) in new[] { (left, "wide"), (low, "high"), (Gap, "wide") })
            if (size.Value < -Tolerance.Length) faults.Add($"{one} too {what} by {faults.Print(Size.Zero - size)} on each side for {(Opening.Path.Length == 0 ? "this cabinet" : Opening.Name)}; change the doors or the cabinet", Spec.Source);
        var uncovered = Spec.Mount == DoorMount.Inset ? Size.Zero : Left - Opening.X.From;
        if (uncovered.Value > 0)
            faults.Add($"{(Spec.Count == 2 ? "two doors" : "a door")} {faults.Print(Width)} wide leave{(Spec.Count == 2 ? "" : "s")} {faults.Print(uncovered)} of the opening uncovered on each side; make {(Spec.Count == 2 ? "them" : "it")} about {faults.Print((area.X.Extent - 2 * Spec.Reveal - Gap) / Spec.Count)} wide, or the cabinet narrower", Spec.Actual.Width?.Source ?? default, Spec.Source);
        var bare = Spec.Mount == DoorMount.Inset ? 0 : Math.Max(Bottom.Value - Opening.Z.From.Value, (Opening.Z.From + Opening.Z.Extent).Value - (Bottom + Height).Value);
        if (bare > 0)
            faults.Add($"{(Spec.Count == 2 ? "two doors" : "a door")} {faults.Print(Height)} high leave{(Spec.Count == 2 ? "" : "s")} {faults.Print(Size.Constant(bare))} of the opening uncovered above or below; make {(Spec.Count == 2 ? "them" : "it")} about {faults.Print(area.Z.Extent - area.Margins.Bottom - area.Margins.Top)} high, or the cabinet lower", Spec.Actual.Height?.Source ?? default, Spec.Source);
        if (Width.Value <= Tolerance.Length || Height.Value <= Tolerance.Length) faults.Add("no room is left for the doors; make the cabinet larger or the reveals smaller", Spec.Source);
    }
}
