using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>A straight channel in a face with square ends, given by its centre line. Lengths in mm.</summary>
public sealed record Groove : Feature
{
    private Groove(string origin, Surface face, Position from, Position to, Size width, Size depth) : base(origin) =>
        (Face, From, To, Width, Depth) = (face, from, to, width, depth);

    /// <summary>The face it is cut into.</summary>
    public Surface Face { get; }

    /// <summary>One end of the centre line.</summary>
    public Position From { get; }

    /// <summary>The other end of the centre line.</summary>
    public Position To { get; }

    /// <summary>Width across the centre line.</summary>
    public Size Width { get; }

    /// <summary>Depth below the face.</summary>
    public Size Depth { get; }

    /// <summary>The outline of the channel on the face.</summary>
    public Contour Outline => Contour.Strip(From.Point, To.Point, Width.Value);

    /// <inheritdoc/>
    public override ImmutableArray<Size> Sizes => [From.X, From.Y, To.X, To.Y, Width, Depth];

    /// <summary>A groove along a centre line.</summary>
    /// <exception cref="ArgumentException">The surface is an edge, the ends are one point, or width or depth are not positive.</exception>
    public static Groove Along(string origin, Surface face, Position from, Position to, Size width, Size depth)
    {
        if (!face.IsFace()) throw new ArgumentException("A groove is cut into a face.", nameof(face));
        if (from.Point.DistanceTo(to.Point) <= Tolerance.Length) throw new ArgumentException("A groove needs two different ends.", nameof(to));
        if (!(width.Value > Tolerance.Length && depth.Value > Tolerance.Length)) throw new ArgumentException("Width and depth of a groove must be positive.", nameof(width));
        return new Groove(origin, face, from, to, width, depth);
    }
}
