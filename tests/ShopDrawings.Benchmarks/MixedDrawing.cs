using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Benchmarks;

/// <summary>
/// A drawing of any size by a fixed formula, the same that <c>dxf_twin.py</c> follows: of each twenty entities seven lines, five circles, two
/// arcs, two outlines with round corners, three texts and a point, on four layers, with six decimals.
/// </summary>
internal sealed class MixedDrawing
{
    private static readonly Layer[] Layers =
    [
        new("OUTLINE", Role.Outline, "Outlines"), new("BORE_500", Role.Bore, "Bores"), new("HIDDEN", Role.Hidden, "Hidden edges"), new("NOTES", Role.Lettering, "Notes"),
    ];

    private long state = 1;

    /// <summary>The drawing of a number of entities.</summary>
    public static Drawing Of(int count)
    {
        var source = new MixedDrawing();
        var entities = ImmutableArray.CreateBuilder<Entity>(count);
        for (var i = 0; i < count; i++) entities.Add(source.Next(i));
        return new Drawing("Mixed", "Of everything something", null, entities.MoveToImmutable());
    }

    private Entity Next(int i)
    {
        var layer = Layers[i / 5 % 4];
        return (i % 20) switch
        {
            < 7 => new SegmentEntity(layer, new Segment(Place(), Place())),
            < 12 => new CircleEntity(layer, Place(), 1 + Number(40)),
            < 14 => new SegmentEntity(layer, QuarterTurn(Place(), 1 + Number(400))),
            < 16 => new ContourEntity(layer, Rounded(Place(), 50 + Number(400), 50 + Number(400), 1 + Number(20))),
            < 19 => new TextEntity(layer, Place(), 3.5, FormattableString.Invariant($"Panel {i}")),
            _ => new PointEntity(layer, Place()),
        };
    }

    private static Segment QuarterTurn(Point2 centre, double radius) =>
        new(centre + new Point2(radius, 0), centre + new Point2(0, radius), Math.Tan(Math.PI / 8));

    private static Contour Rounded(Point2 p, double width, double height, double radius) => Contour.RoundedRectangle(p.X, p.Y, p.X + width, p.Y + height, radius);

    private Point2 Place()
    {
        var x = Number(2440);
        return new Point2(x, Number(1220));
    }

    // Whole millionths below a limit, by a linear congruence.
    private double Number(int below)
    {
        state = state * 48_271 % 2_147_483_647;
        return state * 997 % (below * 1_000_000L) / 1e6;
    }
}
