using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// A neutral drawing: layers and entities in drawing order, in mm, x to the right, y up. It knows no file format and no look.
/// Invariants: names of layers and of blocks are unique whatever their case; every entity's layer is listed.
/// </summary>
public sealed class Drawing
{
    /// <summary>White space around a drawing without paper, in mm.</summary>
    private const double Margin = 10;

    /// <summary>Makes a drawing; layers are listed in the order their first entity appears, those only blocks use last.</summary>
    /// <param name="title">One line that says what it shows.</param>
    /// <param name="description">A sentence or two for someone who cannot see it.</param>
    /// <param name="page">Width and height of the paper in mm with the origin in its lower left corner, or nothing for a 1:1 model without paper.</param>
    /// <param name="entities">What is drawn.</param>
    /// <exception cref="ArgumentException">Two different layers, or two blocks, share a name.</exception>
    public Drawing(string title, string description, Point2? page, IEnumerable<Entity> entities)
    {
        Title = title;
        Description = description;
        Page = page;
        Entities = entities is ImmutableArray<Entity> array ? array : [.. entities];
        Blocks = [.. Entities.OfType<InsertEntity>().Select(i => i.Block).Distinct()];
        Layers = [.. Entities.Select(e => e.Layer).Concat(Blocks.SelectMany(b => b.Entities).Select(e => e.Layer)).Distinct()];
        if (Layers.Select(l => l.Name.ToUpperInvariant()).Distinct().Count() != Layers.Length)
            throw new ArgumentException("Two layers of the drawing share a name.", nameof(entities));
        if (Blocks.Select(b => b.Name).Distinct().Count() != Blocks.Length) throw new ArgumentException("Two blocks of the drawing share a name.", nameof(entities));
    }

    /// <summary>One line that says what it shows.</summary>
    public string Title { get; }

    /// <summary>A sentence or two for someone who cannot see it.</summary>
    public string Description { get; }

    /// <summary>Width and height of the paper in mm, or nothing for a 1:1 model without paper.</summary>
    public Point2? Page { get; }

    /// <summary>The layers in the order their first entity appears.</summary>
    public ImmutableArray<Layer> Layers { get; }

    /// <summary>The blocks inserted, in the order of their first insert.</summary>
    public ImmutableArray<Block> Blocks { get; }

    /// <summary>What is drawn, in drawing order.</summary>
    public ImmutableArray<Entity> Entities { get; }

    /// <summary>What a printed page shows: the paper, or else all entities with white space around them.</summary>
    internal Box2 Paper => Page is { } page ? new Box2(default, page) : (Extents ?? default).Grown(Margin);

    /// <summary>What lies on each layer in drawing order, the parts of inserted blocks where they lie: on layers of their own.</summary>
    internal IEnumerable<(Layer Layer, IEnumerable<Entity> Entities)> ByLayer()
    {
        var entities = Entities.SelectMany(e => e is InsertEntity insert ? insert.Parts : [e]).ToLookup(e => e.Layer);
        return Layers.Select(layer => (layer, entities[layer]));
    }

    /// <summary>The smallest box around all entities, or nothing for an empty drawing.</summary>
    public Box2? Extents => Entities.IsEmpty ? null : Entities.Select(e => e.Bounds).Aggregate((a, b) => a.Union(b));
}
