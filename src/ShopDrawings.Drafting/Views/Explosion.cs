using System.Collections.Immutable;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// How far each panel is moved to pull an assembly apart: away from the middle in proportion to its distance from it, and panels that lie on each
/// other further, so that a strip of each shows.
/// </summary>
internal sealed class Explosion
{
    // Strip that shows between panels that lay on each other, as a share of the assembly's largest extent.
    private const double Strip = 0.1;

    private readonly Point3 middle;
    private readonly Point3 factors;
    private readonly List<(double Middle, double Shift)>[] stacks = new List<(double, double)>[3];

    /// <summary>Pulls the placed panels apart.</summary>
    /// <param name="sizes">The assembly.</param>
    /// <param name="factors">How much further from the middle along x, y and z, as a share of the distance.</param>
    public Explosion(ViewSizes sizes, Point3 factors)
    {
        this.factors = factors;
        middle = (sizes.Whole.Min + sizes.Whole.Max) * 0.5;
        var extent = sizes.Whole.Size;
        var strip = Strip * Math.Max(extent.X, Math.Max(extent.Y, extent.Z));
        for (var axis = 0; axis < 3; axis++)
        {
            var levels = sizes.Panels.Where(p => ViewSizes.Normal(p) == axis).Select(ViewSizes.Box)
                .Select(b => (Low: Math.Round(b.Min.Along(axis), 3), High: Math.Round(b.Max.Along(axis), 3))).Distinct().OrderBy(l => l.Low + l.High).ToList();
            var shift = 0.0;
            var stack = new List<(double Middle, double Shift)>();
            for (var i = 0; i < levels.Count; i++)
            {
                if (i > 0)
                {
                    var (before, here) = ((levels[i - 1].Low + levels[i - 1].High) / 2, (levels[i].Low + levels[i].High) / 2);
                    // Panels side by side in one layer stay in it.
                    var apart = (here - before) * (1 + factors.Along(axis));
                    if (levels[i].Low >= levels[i - 1].High - 1) shift += Math.Max(0, strip - apart);
                }

                stack.Add(((levels[i].Low + levels[i].High) / 2, shift));
            }

            // Half of all that was added goes to either side.
            stacks[axis] = [.. stack.Select(s => (s.Middle, s.Shift - shift / 2))];
        }
    }

    /// <summary>Factors to try, the most compact first: the further back, the more shows behind doors and between shelves.</summary>
    public static ImmutableArray<Point3> Factors { get; } = [new(0.9, 1.1, 0.4), new(0.9, 1.9, 0.4), new(1.5, 1.5, 0.6), new(1.5, 2.4, 0.8)];

    /// <summary>How far a placed panel is moved.</summary>
    public Point3 Shift(Panel panel)
    {
        var box = ViewSizes.Box(panel);
        var away = (box.Min + box.Max) * 0.5 - middle;
        var normal = ViewSizes.Normal(panel);
        var own = (box.Min + box.Max).Along(normal) / 2;
        var more = stacks[normal].MinBy(s => Math.Abs(s.Middle - own)).Shift;
        return new Point3(away.X * factors.X + (normal == 0 ? more : 0), away.Y * factors.Y + (normal == 1 ? more : 0), away.Z * factors.Z + (normal == 2 ? more : 0));
    }
}
