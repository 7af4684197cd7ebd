using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A part cut from a board. Frame: x along its length (0 to <see cref="Length"/>), y along its width (0 to <see cref="Width"/>), z from the
/// outside face (0) to the inside face (thickness), right-handed, for the finished size; lengths in mm.
/// Invariants: the outline's box is exactly length by width with a corner at the origin; bands lie on edges; the thickness is the board's.
/// Immutable.
/// </summary>
public sealed class Panel
{
    private Panel(string id, Board board, Size length, Size width, Contour outline, ImmutableArray<EdgeBand> bands, ImmutableArray<Feature> features, Placement? placement)
    {
        (Id, Board, Length, Width, Outline) = (id, board, length, width, outline);
        (Bands, Features, Placement) = (bands, features, placement);
    }

    /// <summary>Its place (<c>left-side</c>) or the user's name for it; unique in the assembly.</summary>
    public string Id { get; }

    /// <summary>What it is cut from.</summary>
    public Board Board { get; }

    /// <summary>Finished size along the grain, or along the longer side where there is none.</summary>
    public Size Length { get; }

    /// <summary>Finished size across the length.</summary>
    public Size Width { get; }

    /// <summary>The board's actual thickness.</summary>
    public Size Thickness => Board.Thickness;

    /// <summary>The finished outline.</summary>
    public Contour Outline { get; }

    /// <summary>Edge bands, at most one an edge.</summary>
    public ImmutableArray<EdgeBand> Bands { get; }

    /// <summary>Everything cut, drilled or marked in it, in the order it was written.</summary>
    public ImmutableArray<Feature> Features { get; }

    /// <summary>Where it stands in the assembly, or nothing for a loose panel.</summary>
    public Placement? Placement { get; }

    /// <summary>The box it fills, in its own frame.</summary>
    public Box3 Box => new(default, new Point3(Length.Value, Width.Value, Thickness.Value));

    /// <summary>Length to saw: the finished length less the bands at both ends, and what is milled off there.</summary>
    public Size CutLength => Sawn(Length, Surface.Start, Surface.End).As("cut-length");

    /// <summary>Width to saw: the finished width less the bands on both sides, and what is milled off there.</summary>
    public Size CutWidth => Sawn(Width, Surface.Near, Surface.Far).As("cut-width");

    /// <summary>
    /// The outline to cut: the finished one less the bands, and what is milled off. In the panel's frame, which is that of the finished size.
    /// </summary>
    public Contour CutOutline => Bands.IsEmpty
        ? Outline
        : Contour.Rectangle(CutInside(Surface.Start), CutInside(Surface.Near), Length.Value - CutInside(Surface.End), Width.Value - CutInside(Surface.Far));

    /// <summary>Whether the finished outline is a plain rectangle.</summary>
    public bool IsRectangular => Outline.Equals(Contour.Rectangle(0, 0, Length.Value, Width.Value));

    /// <summary>Mass in kg of the finished outline, features and bands not counted.</summary>
    public double MassKg => SheetGoods.Mass(Outline.Area, Thickness.Value, Board.DensityKgPerM3);

    /// <summary>A rectangular panel.</summary>
    /// <exception cref="ArgumentException">A size is not positive.</exception>
    public static Panel Rectangular(string id, Board board, Size length, Size width, Placement? placement = null)
    {
        if (!(length.Value > Tolerance.Length && width.Value > Tolerance.Length))
            throw new ArgumentException("Length and width of a panel must be positive.", nameof(length));
        return new Panel(id, board, length, width, Contour.Rectangle(0, 0, length.Value, width.Value), [], [], placement);
    }

    /// <summary>The same panel with another outline of the same length and width.</summary>
    /// <exception cref="ArgumentException">The outline's box is not the panel's, or the panel has bands and the outline is no rectangle.</exception>
    public Panel WithOutline(Contour outline)
    {
        var box = outline.Bounds;
        var fits = box.Min.Length <= Tolerance.Length && Tolerance.Same(box.Max.X, Length.Value) && Tolerance.Same(box.Max.Y, Width.Value);
        if (!fits) throw new ArgumentException("The outline must fill the panel's length and width exactly.", nameof(outline));
        var outlined = new Panel(Id, Board, Length, Width, outline, Bands, Features, Placement);
        return Bands.IsEmpty || outlined.IsRectangular ? outlined : throw new ArgumentException("Only a rectangular panel has bands.", nameof(outline));
    }

    /// <summary>The same panel with more features.</summary>
    public Panel WithFeatures(IEnumerable<Feature> more) => new(Id, Board, Length, Width, Outline, Bands, [.. Features, .. more], Placement);

    /// <summary>The same panel with each bore changed.</summary>
    internal Panel WithBores(Func<Bore, Bore> change) =>
        new(Id, Board, Length, Width, Outline, Bands, [.. Features.Select(f => f is Bore bore ? change(bore) : f)], Placement);

    /// <summary>The same panel with these edge bands.</summary>
    /// <exception cref="ArgumentException">A band lies on a face, two lie on one edge, the panel is no rectangle, or nothing is left between them.</exception>
    public Panel WithBands(IEnumerable<EdgeBand> bands)
    {
        ImmutableArray<EdgeBand> all = [.. bands];
        if (all.Any(b => b.Edge.IsFace()) || all.Select(b => b.Edge).Distinct().Count() != all.Length)
            throw new ArgumentException("A panel has at most one band on each edge.", nameof(bands));
        if (!all.IsEmpty && !IsRectangular) throw new ArgumentException("Only a rectangular panel has bands.", nameof(bands));
        var banded = new Panel(Id, Board, Length, Width, Outline, all, Features, Placement);
        double Left(Size finished, Surface a, Surface b) => finished.Value - (banded.BandOn(a)?.Thickness.Value ?? 0) - (banded.BandOn(b)?.Thickness.Value ?? 0);
        return Left(Length, Surface.Start, Surface.End) > Tolerance.Length && Left(Width, Surface.Near, Surface.Far) > Tolerance.Length
            ? banded
            : throw new ArgumentException("The bands leave nothing between them.", nameof(bands));
    }

    /// <summary>The direction an edge or a face looks once built; of a loose panel, as it lies in its drawing, inside face up.</summary>
    public Direction Facing(Surface surface)
    {
        var outwards = surface.Into() * -1;
        return Placement is null
            ? surface switch
            {
                Surface.Inside => Direction.Top,
                Surface.Outside => Direction.Bottom,
                Surface.Start => Direction.Left,
                Surface.End => Direction.Right,
                Surface.Near => Direction.Front,
                _ => Direction.Back,
            }
            : Directions.Of(Placement.DirectionToAssembly(outwards));
    }

    /// <summary>The surface's word: <c>inside</c>, <c>outside</c>, or where the edge sits once built: <c>front</c>.</summary>
    public string NameOf(Surface surface) => surface switch
    {
        Surface.Inside => "inside",
        Surface.Outside => "outside",
        _ => Facing(surface).Word(),
    };

    /// <summary>The edge that looks in a direction, or nothing where a face does.</summary>
    public Surface? EdgeFacing(Direction direction)
    {
        foreach (var edge in Surfaces.Edges)
            if (Facing(edge) == direction) return edge;
        return null;
    }

    /// <summary>A point on a surface in the panel's frame.</summary>
    public Point3 OnSurface(Surface surface, Point2 at) => surface switch
    {
        Surface.Inside => new(at.X, at.Y, Thickness.Value),
        Surface.Outside => new(at.X, at.Y, 0),
        Surface.Start => new(0, at.X, at.Y),
        Surface.End => new(Length.Value, at.X, at.Y),
        Surface.Near => new(at.X, 0, at.Y),
        _ => new(at.X, Width.Value, at.Y),
    };

    /// <summary>How much material lies behind a surface: the thickness behind a face, length or width behind an edge.</summary>
    public Size Behind(Surface surface) => surface switch
    {
        Surface.Inside or Surface.Outside => Thickness,
        Surface.Start or Surface.End => Length,
        _ => Width,
    };

    /// <summary>Every number of the panel with its derivation.</summary>
    public IEnumerable<Size> Sizes =>
    [
        Length, Width, Thickness, CutLength, CutWidth,
        .. Placement is null ? Array.Empty<Size>() : [Placement.X, Placement.Y, Placement.Z],
        .. Bands.SelectMany(b => b.PreMilled == Size.Zero ? [b.Thickness] : new[] { b.Thickness, b.PreMilled }),
        .. Features.SelectMany(f => f.Sizes),
    ];

    // How far the sawn edge lies inside the finished one; negative where more is milled off than the band is thick.
    private double CutInside(Surface edge) => BandOn(edge) is { } band ? band.Thickness.Value - band.PreMilled.Value : 0;

    private EdgeBand? BandOn(Surface edge) => Bands.FirstOrDefault(b => b.Edge == edge);

    private Size Sawn(Size finished, params ReadOnlySpan<Surface> edges)
    {
        var cut = finished;
        foreach (var edge in edges)
            if (BandOn(edge) is { } band) cut = cut - band.Thickness + band.PreMilled;
        return cut;
    }
}
