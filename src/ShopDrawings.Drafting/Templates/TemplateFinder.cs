using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>Which bores in faces are marked from templates.</summary>
public enum TemplateChoice
{
    /// <summary>Those that are marked and drilled by hand.</summary>
    Marked,

    /// <summary>Those a machine makes too.</summary>
    All,

    /// <summary>None: there are no templates and no story sticks.</summary>
    None,
}

/// <summary>The templates of an assembly, and what no template holds.</summary>
/// <param name="All">The templates, in the order of their first places.</param>
/// <param name="OnSticks">Bores that are marked from story sticks: those in edges, and those of patterns too large for paper.</param>
internal sealed record TemplateSet(ImmutableArray<Template> All, ImmutableArray<(Panel Panel, Bore Bore)> OnSticks)
{
    /// <summary>
    /// The largest pattern on paper, in mm. Paper grows and shrinks with the air by some 0.25 % (common practice, no source): 0.75 mm here, 2.5 mm in a metre.
    /// </summary>
    public const double Largest = 300;

    // Nearer an end than this a row is measured from that end, in mm: our choice.
    private const double Far = 100;

    // Holes of the user's own belong together that are this near each other: our choice.
    private const double Near = 64;

    /// <summary>The templates of an assembly.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="choice">Which bores.</param>
    /// <param name="withheld">Ids of panels that get none.</param>
    /// <param name="largest">The largest pattern that becomes a template, in mm.</param>
    public static TemplateSet Of(Assembly assembly, TemplateChoice choice, IReadOnlyCollection<string> withheld, double largest = Largest)
    {
        var found = new List<(string Base, TemplatePattern Pattern, List<ImmutableArray<TemplatePlace>> Ways)>();
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var sticks = ImmutableArray.CreateBuilder<(Panel, Bore)>();
        bool IsChosen(Bore bore) => choice switch
        {
            TemplateChoice.Marked => bore.Method == BoreMethod.Marked,
            TemplateChoice.All => bore.Method is BoreMethod.Marked or BoreMethod.Machined,
            _ => false,
        };

        foreach (var panel in assembly.Panels.Where(p => !withheld.Contains(p.Id)))
        {
            var bores = panel.Features.OfType<Bore>().Where(IsChosen).ToList();
            sticks.AddRange(bores.Where(b => !b.Surface.IsFace()).Select(b => (panel, b)));
            foreach (var group in bores.Where(b => b.Surface.IsFace()).GroupBy(b => (b.Surface, b.Origin)))
                foreach (var together in group.Key.Origin == panel.Id ? Clusters([.. group]) : [[.. group]])
                {
                    var pattern = PatternOf(panel, group.Key.Surface, group.Key.Origin, together);
                    if (Tolerance.Exceeds(pattern.Bounds.Width, largest) || Tolerance.Exceeds(pattern.Bounds.Height, largest)) sticks.AddRange(together.Select(b => (panel, b)));
                    else Add(new TemplatePlace(panel, group.Key.Surface, group.Key.Origin, default, default, together), pattern);
                }
        }

        var names = new Dictionary<string, int>(StringComparer.Ordinal);
        return new TemplateSet([.. found.Select(f => new Template(Named(f.Base), f.Pattern, Settled(f.Pattern, f.Ways)))], sticks.ToImmutable());

        void Add(TemplatePlace place, TemplatePattern pattern)
        {
            var ways = TemplateTurn.All.Select(turn =>
            {
                var turned = pattern.Mapped(turn.Of, turn.IsMirrored);
                var offset = turned.Corner;
                return (Place: place with { Turn = turn, Offset = offset }, Pattern: turned.Mapped(p => p - offset, false));
            }).ToList();
            var like = ways.Select(w => (w.Place, Index: known.GetValueOrDefault(w.Pattern.Key(), -1))).Where(w => w.Index >= 0).ToList();
            if (like.Count == 0)
            {
                known.Add(ways[0].Pattern.Key(), found.Count);
                found.Add((BaseName(assembly, ways[0].Place), ways[0].Pattern, [[ways[0].Place]]));
                return;
            }

            found[like[0].Index].Ways.Add([.. like.Where(w => w.Index == like[0].Index).Select(w => w.Place)]);
        }

        string Named(string name)
        {
            var number = names[name] = names.GetValueOrDefault(name) + 1;
            return number == 1 ? name : FormattableString.Invariant($"{name}_{number}");
        }
    }

    // Of the ways that bring the holes of each place together those that bring the most edges together at all of them, so that these stay on the paper;
    // then those that measure line A from one edge on panels that are each other's mirror image, so that rows left and right are level; then those that
    // need the fewest mirrored ones, and the fewest turns.
    private static ImmutableArray<TemplatePlace> Settled(TemplatePattern pattern, List<ImmutableArray<TemplatePlace>> ways)
    {
        static HashSet<string> Keys(TemplatePlace place, TemplatePattern pattern) => [.. Template.EdgesNear(place, pattern).Select(e => e.Key)];
        string[] edges = [.. Keys(ways[0][0], pattern)];
        var near = ways.Select(w => w.Select(p => (Place: p, Edges: Keys(p, pattern))).ToList()).ToList();
        return Enumerable.Range(0, 1 << edges.Length)
            .Select(set => edges.Where((_, i) => (set >> i & 1) == 1).ToList())
            .Select(wanted => (wanted.Count, Places: near.Select(w => w.Where(p => p.Edges.IsSupersetOf(wanted)).Select(p => p.Place).OrderByDescending(p => IsLevel(p, ways[0][0])).FirstOrDefault()).OfType<TemplatePlace>().ToImmutableArray()))
            .Where(choice => choice.Places.Length == ways.Count)
            .OrderByDescending(choice => choice.Count).ThenBy(choice => choice.Places.Count(p => p.Turn.IsMirrored))
            .First().Places;

        // A row far from both ends is level with the first place's where the same end is its datum.
        static bool IsLevel(TemplatePlace place, TemplatePlace first) =>
            place.LineA.Distance <= Far || first.LineA.Distance <= Far || Math.Abs(place.LineA.Distance - first.LineA.Distance) <= Tolerance.Length || place.Panel.NameOf(place.LineA.Edge) == first.Panel.NameOf(first.LineA.Edge);
    }

    // The pattern as it lies before someone who looks at the face, with the openings and marks that belong to it.
    private static TemplatePattern PatternOf(Panel panel, Surface face, string origin, ImmutableArray<Bore> bores)
    {
        Point2 View(Point2 p) => TemplatePlace.View(face, p);
        var isOwn = origin == panel.Id;
        return new(
            [.. bores.Select(b => new TemplateHole(View(b.At.Point), b.Diameter.Value, b.Depth?.Value, b.Use == BoreUse.Countersink))],
            isOwn ? [] : [.. panel.Features.OfType<CutOut>().Where(c => c.Origin == origin).Select(c => c.Outline.Mapped(View, face == Surface.Outside))],
            isOwn ? [] : [.. panel.Features.OfType<Mark>().Where(m => m.Origin == origin && m.Face == face).Select(m => (View(m.From.Point), View((m.To ?? m.From).Point)))]);
    }

    private static IEnumerable<ImmutableArray<Bore>> Clusters(List<Bore> bores)
    {
        var clusters = new List<List<Bore>>();
        foreach (var bore in bores)
        {
            var near = clusters.Where(c => c.Exists(b => b.At.Point.DistanceTo(bore.At.Point) <= Near)).ToList();
            var first = near.FirstOrDefault();
            if (first is null) clusters.Add(first = []);
            foreach (var other in near.Skip(1))
            {
                first.AddRange(other);
                clusters.Remove(other);
            }

            first.Add(bore);
        }

        return clusters.Select(c => c.ToImmutableArray());
    }

    // The bought part's own name, with the half of it that is meant.
    private static string BaseName(Assembly assembly, TemplatePlace place)
    {
        if (place.Origin == place.Panel.Id) return "holes";
        if (assembly.Hardware.FirstOrDefault(h => h.Id == place.Origin) is { } piece)
            return Slug(piece.Name) + (piece.Kind, IsFirst: piece.Mounts[0].Panel == place.Panel.Id) switch
            {
                (HardwareKind.Hinge, _) => place.Bores.Any(b => b.Use == BoreUse.Seat && b.Diameter.Value > 20) ? "-cup" : "-plate",
                (HardwareKind.Slide, true) => "-outer",
                (HardwareKind.Slide, false) => "-inner",
                _ => "",
            };
        return assembly.Joints.FirstOrDefault(j => j.Id == place.Origin)?.Fasteners.FirstOrDefault()?.Fastener.Name is { } fastener ? Slug(fastener) : "pattern";
    }

    private static string Slug(string name) => new([.. name.Select(c => char.IsAsciiLetterOrDigit(c) ? char.ToLowerInvariant(c) : '-')]);
}
