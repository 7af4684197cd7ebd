using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// The line along which two pieces of a plate are joined: straight, with round knobs that hold and register. A knob goes out of the line by fillets,
/// so that nowhere is it narrower or sharper than the cutter: with a knob of radius R whose middle lies 1.5 R beyond the line and fillets of 0.6 R the
/// neck is 1.45 R wide (derived, geometry). Both pieces have the same line; what fits between them is the machine's compensation. Lengths in mm.
/// </summary>
internal sealed class JointLine
{
    private const double Middle = 1.5, Fillet = 0.6, Smallest = 8;

    /// <summary>A joint for a cutter.</summary>
    /// <param name="cutterRadius">Radius of the cutter, in mm.</param>
    // A hair more than the cutter, so that it can go round in the fillets.
    public JointLine(double cutterRadius) => Radius = Math.Max(Smallest, 1.05 * cutterRadius / Fillet);

    /// <summary>Radius of the knobs.</summary>
    public double Radius { get; }

    /// <summary>How far a knob reaches beyond the line.</summary>
    public double Reach => (Middle + 1) * Radius;

    /// <summary>How far a knob and its fillets reach along the line to either side of its middle.</summary>
    public double Half => Math.Max(Radius, Foot);

    private double Foot => Radius * Math.Sqrt((1 + Fillet) * (1 + Fillet) - (Middle - Fillet) * (Middle - Fillet));

    /// <summary>The line from one end to the other, with knobs to the right of it.</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="to">Where it ends.</param>
    /// <param name="knobs">The middles of the knobs by their distances from its beginning, in order.</param>
    public ImmutableArray<Segment> Path(Point2 from, Point2 to, IEnumerable<double> knobs)
    {
        var along = (to - from) * (1 / from.DistanceTo(to));
        var right = along.Left * -1;
        Point2 At(double outwards, double forwards) => from + right * outwards + along * forwards;
        var segments = ImmutableArray.CreateBuilder<Segment>();
        var last = from;
        // The direction from a fillet's middle to the knob's, from the way out of the line.
        var angle = Math.Atan2(Foot, (Middle - Fillet) * Radius);
        foreach (var knob in knobs)
        {
            var (start, end) = (At(0, knob - Foot), At(0, knob + Foot));
            double Touch(double sine) => Foot - Fillet * Radius * sine;
            var outwards = Fillet * Radius * (1 + Math.Cos(angle));
            var (neck, back) = (At(outwards, knob - Touch(Math.Sin(angle))), At(outwards, knob + Touch(Math.Sin(angle))));
            segments.Add(new Segment(last, start));
            segments.Add(new Segment(start, neck, Math.Tan((angle - Math.PI) / 4)));
            segments.Add(new Segment(neck, back, Math.Tan((Math.PI - angle) / 2)));
            segments.Add(new Segment(back, end, Math.Tan((angle - Math.PI) / 4)));
            last = end;
        }

        segments.Add(new Segment(last, to));
        return segments.ToImmutable();
    }
}
