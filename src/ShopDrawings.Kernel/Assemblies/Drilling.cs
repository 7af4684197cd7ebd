using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>How the drill goes through one bore. Lengths in mm.</summary>
/// <param name="Exit">The surface where it comes out, which is where a backing board goes; nothing for a bore that ends in the material.</param>
/// <param name="Stop">
/// Setting of the depth stop from the surface the drill starts on: the depth, and before it the thickness of every panel that is drilled
/// through. Nothing for a bore that goes through or is there already.
/// </param>
/// <param name="Mates">The panels it is drilled through, from the bore outwards; none unless it is drilled in place.</param>
internal sealed record Drilling(Surface? Exit, Size? Stop, ImmutableArray<Panel> Mates)
{
    /// <summary>Less than this under a blind bore in a face asks for care with the stop: 3 mm, common practice, no source.</summary>
    public const double LeastLeftWithoutCare = 3;

    /// <summary>How a bore of a panel is drilled.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="bore">One of its bores.</param>
    /// <param name="holes">The holes of the whole assembly.</param>
    public static Drilling Of(Panel panel, Bore bore, ThroughHoles holes)
    {
        var mates = bore.Method == BoreMethod.InPlace ? holes.Before(panel, bore) : [];
        var comesOut = bore.Depth is null || !Tolerance.Exceeds(panel.Behind(bore.Surface).Value, bore.Depth.Value);
        var stop = bore.Method == BoreMethod.Given || bore.Depth is null ? null : mates.Aggregate(bore.Depth, (sum, mate) => sum + mate.Thickness);
        return new Drilling(comesOut ? bore.Surface.Opposite() : null, stop, mates);
    }

    /// <summary>Material left under a blind bore in a face, where it is so little that the stop must be set with care; else nothing.</summary>
    public static double? ScantlyLeft(Panel panel, Bore bore)
    {
        if (!bore.Surface.IsFace() || bore.Depth is not { } depth) return null;
        var left = panel.Thickness.Value - depth.Value;
        return Tolerance.Exceeds(LeastLeftWithoutCare, left) ? left : null;
    }
}
