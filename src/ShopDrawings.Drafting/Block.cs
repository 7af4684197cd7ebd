using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What is drawn several times alike. Drawings hold it by reference: two blocks are the same if they are one object.</summary>
public sealed class Block
{
    /// <summary>A block.</summary>
    /// <param name="name">Letters A–Z, digits and underscores, a letter first, at most 31 characters.</param>
    /// <param name="entities">At least one; no dimensions and no inserts of other blocks. The insertion point is the origin.</param>
    /// <exception cref="ArgumentException">The name is not of that form, or an entity cannot be in a block.</exception>
    public Block(string name, IEnumerable<Entity> entities)
    {
        if (name.Length is 0 or > 31 || !char.IsAsciiLetterUpper(name[0]) || !name.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '_'))
            throw new ArgumentException($"“{name}” is no block name.", nameof(name));
        (Name, Entities) = (name, [.. entities]);
        if (Entities.IsEmpty || Entities.Any(e => e is Dimension or InsertEntity))
            throw new ArgumentException($"Block {name} must hold an entity, and no dimension or insert.", nameof(entities));
    }

    /// <summary>Its name; unique in a drawing.</summary>
    public string Name { get; }

    /// <summary>What it draws, in mm about the insertion point.</summary>
    public ImmutableArray<Entity> Entities { get; }
}

/// <summary>A block placed in the drawing, turned and scaled, never mirrored. Its entities keep their own layers.</summary>
/// <param name="Layer">The layer of the insert itself.</param>
/// <param name="Block">What is drawn.</param>
/// <param name="Position">Where its insertion point comes to lie.</param>
/// <param name="AngleDegrees">How far it is turned, anticlockwise.</param>
/// <param name="Scale">How much larger, above 0.</param>
public sealed record InsertEntity(Layer Layer, Block Block, Point2 Position, double AngleDegrees = 0, double Scale = 1) : Entity(Layer)
{
    /// <inheritdoc/>
    public override Box2 Bounds => Parts.Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));

    /// <summary>The block's entities where they come to lie.</summary>
    public IEnumerable<Entity> Parts
    {
        get
        {
            var (sin, cos) = Math.SinCos(AngleDegrees * (Math.PI / 180));
            Point2 Vector(Point2 v) => new Point2(v.X * cos - v.Y * sin, v.X * sin + v.Y * cos) * Scale;
            Point2 Place(Point2 p) => Position + Vector(p);
            Segment Path(Segment s) => new(Place(s.Start), Place(s.End), s.Bulge);
            Contour Closed(Contour c) => Contour.FromSegments(c.Segments.Select(Path));
            return Block.Entities.Select(entity => (Entity)(entity switch
            {
                ContourEntity e => e with { Contour = Closed(e.Contour) },
                SegmentEntity e => e with { Segment = Path(e.Segment) },
                CircleEntity e => e with { Centre = Place(e.Centre), Radius = e.Radius * Scale },
                PointEntity e => e with { Position = Place(e.Position) },
                TextEntity e => e with { Position = Place(e.Position), Height = e.Height * Scale, AngleDegrees = e.AngleDegrees + AngleDegrees },
                ArrowEntity e => e with { Tip = Place(e.Tip), Left = Place(e.Left), Right = Place(e.Right) },
                EllipseEntity e => e with { Centre = Place(e.Centre), Major = Vector(e.Major) },
                LeaderEntity e => e with { Points = [.. e.Points.Select(Place)], Height = e.Height * Scale },
                HatchEntity e => e with
                {
                    Outline = Closed(e.Outline),
                    Islands = [.. e.Islands.Select(Closed)],
                    Pattern = e.Pattern is { } p ? new HatchPattern(p.AngleDegrees + AngleDegrees, p.Spacing * Scale, Place(p.Origin)) : null,
                },
                _ => throw new System.Diagnostics.UnreachableException(entity.GetType().Name),
            }));
        }
    }
}
