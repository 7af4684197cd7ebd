using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A bush that is pressed into a guide, flush with both faces of the plate. Lengths in mm.</summary>
/// <param name="Bit">The bit that runs in it.</param>
/// <param name="Outside">Its outside diameter, which is that of its hole.</param>
internal sealed record GuideBush(double Bit, double Outside);

/// <summary>What drill guides are made of and for. Lengths in mm.</summary>
/// <param name="Choice">Which bores they are for.</param>
/// <param name="Board">What plates and fences are cut from.</param>
/// <param name="Machine">What cuts them; how wide its tool is and how large its bed.</param>
/// <param name="Bushes">The bushes, at most one for a bit.</param>
/// <param name="Clearance">How much wider than its bit a hole without a bush is.</param>
/// <param name="Fit">How much wider than the board is thick a slot for a fence is.</param>
internal sealed record GuideSettings(TemplateChoice Choice, Board Board, Machine Machine, ImmutableArray<GuideBush> Bushes, double Clearance, double Fit)
{
    /// <summary>Clearance of a bit in its hole: 0.1 mm, common practice, no source.</summary>
    public const double UsualClearance = 0.1;

    /// <summary>Clearance of a fence in its slots: 0.2 mm, common practice, no source.</summary>
    public const double UsualFit = 0.2;

    /// <summary>The bush of a bit, or nothing.</summary>
    public GuideBush? BushOf(double bit) => Bushes.FirstOrDefault(b => Math.Abs(b.Bit - bit) <= ToolChoice.SameDiameter);

    /// <summary>
    /// Radius in mm that the machine's cutter leaves in the ends of a slot and needs in hollows; half the kerf of a laser, and 0 for a drawing.
    /// </summary>
    /// <param name="width">Of the slot, or nothing for an outline.</param>
    public double CutterRadius(double width = double.PositiveInfinity) =>
        (Machine.Tools.FirstOrDefault(t => t.Kind is ToolKind.Cutter or ToolKind.Beam && !Tolerance.Exceeds(t.Diameter, width))?.Diameter ?? 0) / 2;
}
