using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A round hole, square to the face or edge it is drilled into. Lengths in mm.</summary>
public sealed record Bore : Feature
{
    private BoreMethod? method;

    private Bore(string origin, Surface surface, Position at, Size diameter, Size? depth, BoreUse use) : base(origin) =>
        (Surface, At, Diameter, Depth, Use) = (surface, at, diameter, depth, use);

    /// <summary>The face or edge it is drilled from.</summary>
    public Surface Surface { get; }

    /// <summary>The centre on that surface.</summary>
    public Position At { get; }

    /// <summary>Diameter.</summary>
    public Size Diameter { get; }

    /// <summary>Depth to the end of the cylinder, or nothing for a bore that goes through.</summary>
    public Size? Depth { get; }

    /// <summary>What it is for.</summary>
    public BoreUse Use { get; }

    /// <summary>The number of the fastener of its joint it belongs to, from 1; nothing for any other bore. Bores of one fastener may meet.</summary>
    public int? Fastener { get; init; }

    /// <summary>How and when it is made; machined unless whoever wrote it, or the shop's habit, says otherwise.</summary>
    public BoreMethod Method
    {
        get => method ?? BoreMethod.Machined;
        init => method = value;
    }

    /// <summary>Whether whoever wrote it said how it is made; then the shop's habit does not count.</summary>
    internal bool HasMethod => method is not null;

    /// <inheritdoc/>
    public override ImmutableArray<Size> Sizes => Depth is null ? [At.X, At.Y, Diameter] : [At.X, At.Y, Diameter, Depth];

    /// <summary>A bore from face to face.</summary>
    /// <exception cref="ArgumentException">The surface is an edge or the diameter is not positive.</exception>
    public static Bore Through(string origin, Surface face, Position at, Size diameter, BoreUse use = BoreUse.Plain)
    {
        if (!face.IsFace()) throw new ArgumentException("A bore through a panel enters a face.", nameof(face));
        Check(diameter);
        return new Bore(origin, face, at, diameter, null, use);
    }

    /// <summary>A bore that ends in the material.</summary>
    /// <exception cref="ArgumentException">The diameter or the depth is not positive.</exception>
    public static Bore Blind(string origin, Surface surface, Position at, Size diameter, Size depth, BoreUse use = BoreUse.Plain)
    {
        Check(diameter);
        Check(depth);
        return new Bore(origin, surface, at, diameter, depth, use);
    }

    /// <summary>The same blind bore with another depth.</summary>
    internal Bore AsDeepAs(Size depth) => new(Origin, Surface, At, Diameter, depth, Use) { Fastener = Fastener, method = method };

    /// <summary>From the centre of its mouth to the end of the cylinder, in the frame of its panel.</summary>
    internal Axis AxisIn(Panel panel)
    {
        var entry = panel.OnSurface(Surface, At.Point);
        return new Axis(entry, entry + Surface.Into() * (Depth ?? panel.Behind(Surface)).Value);
    }

    private static void Check(Size size)
    {
        if (!(size.Value > Tolerance.Length)) throw new ArgumentException("Diameter and depth of a bore must be positive.", nameof(size));
    }
}

/// <summary>What a bore is for.</summary>
public enum BoreUse
{
    /// <summary>Whatever the user wants it for.</summary>
    Plain,

    /// <summary>A screw passes through it freely.</summary>
    Clearance,

    /// <summary>A screw cuts its thread into it.</summary>
    Pilot,

    /// <summary>A cone for the head of a screw; the depth is that of the cone.</summary>
    Countersink,

    /// <summary>A part sits in it: a dowel, a cam, the head of a connector screw, the cup of a hinge, a shelf pin.</summary>
    Seat,
}
