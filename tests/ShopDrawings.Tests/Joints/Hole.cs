using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Joints;

/// <summary>A bore as it lies in the assembly, worked out from the placement's numbers alone. Lengths in mm.</summary>
internal sealed record Hole(Panel Panel, Bore Bore, double[] Entry, int Axis, int Sign)
{
    private const string Axes = "xyz";

    /// <summary>How deep it is; through, as the material behind its surface.</summary>
    public double Depth { get; } = Bore.Depth?.Value ?? Panel.Thickness.Value;

    /// <summary>Half its diameter.</summary>
    public double Radius => Bore.Diameter.Value / 2;

    /// <summary>Where it begins along its axis.</summary>
    public double Low => Sign > 0 ? Entry[Axis] : Entry[Axis] - Depth;

    /// <summary>Where it ends along its axis.</summary>
    public double High => Sign > 0 ? Entry[Axis] + Depth : Entry[Axis];

    /// <summary>Every bore of every placed panel.</summary>
    public static List<Hole> Of(Assembly assembly) =>
        [.. assembly.Panels.Where(p => p.Placement is not null).SelectMany(p => p.Features.OfType<Bore>().Select(b => Of(p, b)))];

    /// <summary>A bore of a placed panel.</summary>
    public static Hole Of(Panel panel, Bore bore)
    {
        var (x, y) = (bore.At.X.Value, bore.At.Y.Value);
        // In the panel's frame: the place, and which of its axes the drill follows, which way.
        var (place, axis, sign) = bore.Surface switch
        {
            Surface.Inside => (new[] { x, y, panel.Thickness.Value }, 2, -1),
            Surface.Outside => ([x, y, 0], 2, 1),
            Surface.Start => ([0, x, y], 0, 1),
            Surface.End => ([panel.Length.Value, x, y], 0, -1),
            Surface.Near => ([x, 0, y], 1, 1),
            _ => ([x, panel.Width.Value, y], 1, -1),
        };
        var placement = panel.Placement!;
        Direction[] frame = [placement.AlongLength, placement.AlongWidth, placement.Inwards];
        double[] entry = [placement.X.Value, placement.Y.Value, placement.Z.Value];
        for (var i = 0; i < 3; i++) entry[(int)frame[i] / 2] += (int)frame[i] % 2 == 1 ? place[i] : -place[i];
        return new Hole(panel, bore, entry, (int)frame[axis] / 2, (int)frame[axis] % 2 == 1 ? sign : -sign);
    }

    /// <summary>Whether two flat-ended cylinders share more than a hair: exact, as all axes run along x, y or z.</summary>
    public bool Meets(Hole other, double hair = 1e-6)
    {
        if (Axis == other.Axis)
        {
            double across = 0;
            for (var i = 0; i < 3; i++)
                if (i != Axis) across += (Entry[i] - other.Entry[i]) * (Entry[i] - other.Entry[i]);
            return Math.Min(High, other.High) - Math.Max(Low, other.Low) > hair && Math.Sqrt(across) < Radius + other.Radius - hair;
        }

        // Along the third axis each is as wide as its chord where the other's axis passes its ends.
        var third = 3 - Axis - other.Axis;
        static double Outside(double at, double low, double high) => Math.Max(Math.Max(low - at, at - high), 0);
        var (pastOther, pastThis) = (Outside(Entry[other.Axis], other.Low, other.High), Outside(other.Entry[Axis], Low, High));
        if (pastOther >= Radius - hair || pastThis >= other.Radius - hair) return false;
        var reach = Math.Sqrt(Radius * Radius - pastOther * pastOther) + Math.Sqrt(other.Radius * other.Radius - pastThis * pastThis);
        return Math.Abs(Entry[third] - other.Entry[third]) < reach - hair;
    }

    /// <summary>Distance between two axes, whose directions are those of the assembly: per axis the gap between two stretches.</summary>
    public double AxesApart(Hole other)
    {
        double sum = 0;
        for (var i = 0; i < 3; i++)
        {
            var (a, b) = (Axis == i ? (Low, High) : (Entry[i], Entry[i]), other.Axis == i ? (other.Low, other.High) : (other.Entry[i], other.Entry[i]));
            var gap = Math.Max(Math.Max(b.Item1 - a.Item2, a.Item1 - b.Item2), 0);
            sum += gap * gap;
        }

        return Math.Sqrt(sum);
    }

    /// <summary>One line: <c>bottom 18 50 9 +x 2.8 deep 32 pilot</c>; <c>through</c> where it has no depth.</summary>
    public override string ToString()
    {
        static string N(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);
        var depth = Bore.Depth is null ? "through" : "deep " + N(Depth);
        return $"{Panel.Id} {string.Join(' ', Entry.Select(N))} {(Sign > 0 ? '+' : '-')}{Axes[Axis]} {N(Bore.Diameter.Value)} {depth} {Bore.Use.ToString().ToLowerInvariant()}";
    }
}
