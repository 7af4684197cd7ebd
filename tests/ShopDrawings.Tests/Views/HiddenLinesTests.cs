using CsCheck;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Tests.Cabinet;

namespace ShopDrawings.Tests.Views;

/// <summary>Hidden lines against a twin that casts a ray for each point.</summary>
public class HiddenLinesTests
{
    // Lines must pass this near a point that shows, and no nearer to one that does not, in mm.
    private const double Near = 0.01;

    private static readonly Projection[] Views = [Projection.Isometric, Projection.Front, Projection.Left, Projection.Plan];

    [Fact]
    public void What_is_drawn_is_what_a_ray_reaches() => RandomCabinet.Any.Sample(
        cabinet =>
        {
            var boxes = Fixtures.DesignOf(cabinet.Text).Assembly.Panels.Select(p => p.Placement!.ToAssembly(p.Box)).ToList();
            foreach (var view in Views) Compare(boxes, view);
        },
        iter: 15);

    [Fact]
    public void A_hole_lets_through_what_is_behind_it()
    {
        var board = Board.Create("b", BoardKind.Mdf, UnitsNet.Length.FromMillimeters(18));
        Kernel.Size S(double mm) => Kernel.Size.Given(mm, "t", default);
        var front = Panel.Rectangular("front", board, S(400), S(300), Placement.Facing(S(0), S(0), S(0), Direction.Front, Direction.Top))
            .WithFeatures([Bore.Through("front", Surface.Inside, new Position(S(200), S(150)), S(100))]);
        var middle = front.Placement!.ToAssembly(new Point3(200, 150, 0));
        // A post behind the hole: its right edge crosses it upright.
        var post = Body.Block(new Box3(new(middle.X - 300, 200, -50), new(middle.X + 10, 220, 450)));

        var (lines, arcs) = new HiddenLines([Body.Of(front), post], Projection.Front).Draw(1);

        var circle = Assert.Single(arcs);
        Assert.Equal((0.0, 360.0, 50.0), (circle.FromDegrees, circle.ToDegrees, circle.Edge.Radius));
        var half = Math.Sqrt(50 * 50 - 10 * 10);
        var through = Assert.Single(lines, l => l.Body == 1 && l.Line.Start.DistanceTo(new(middle.X + 10, middle.Z - half)) < 0.5 && l.Line.End.DistanceTo(new(middle.X + 10, middle.Z + half)) < 0.5);
        Assert.Equal(2 * half, through.Line.Length, 0.5);
    }

    [Fact]
    public void A_circle_seen_isometrically_is_an_ellipse_cut_where_it_is_covered()
    {
        var plate = Body.Block(new Box3(new(0, 0, 0), new(200, 200, 10)));
        var board = Board.Create("b", BoardKind.Mdf, UnitsNet.Length.FromMillimeters(10));
        Kernel.Size S(double mm) => Kernel.Size.Given(mm, "t", default);
        var panel = Panel.Rectangular("p", board, S(200), S(200), Placement.Facing(S(0), S(0), S(0), Direction.Bottom, Direction.Right))
            .WithFeatures([Bore.Blind("p", Surface.Inside, new Position(S(100), S(100)), S(15), S(5))]);

        var arc = Assert.Single(new HiddenLines([Body.Of(panel)], Projection.Isometric).Draw(1).Arcs);
        // A block over the half of the mouth at the back left.
        var half = new HiddenLines([Body.Of(panel), Body.Block(new Box3(new(0, 100, 10), new(200, 200, 11)))], Projection.Isometric).Draw(1).Arcs;

        Assert.Equal((0.0, 360.0), (arc.FromDegrees, arc.ToDegrees));
        var part = Assert.Single(half);
        Assert.InRange(part.ToDegrees - part.FromDegrees, 170, 181);
        Assert.Empty(new HiddenLines([plate], Projection.Isometric).Draw(1).Arcs);
    }

    // For points of every edge: a line is drawn there if and only if some edge through that point of the paper bounds a face a ray leaves freely.
    private static void Compare(List<Box3> boxes, Projection view)
    {
        var (lines, _) = new HiddenLines(boxes.Select(Body.Block), view).Draw(1);
        var edges = boxes.SelectMany(Edges).ToList();
        foreach (var edge in edges)
        {
            if (view.Map(edge.From).DistanceTo(view.Map(edge.To)) < 1) continue;
            foreach (var share in new[] { 0.031, 0.273, 0.517, 0.741, 0.969 })
            {
                var at = view.Map(edge.From + (edge.To - edge.From) * share);
                // Where another line ends or crosses nearby, the two cannot be told apart.
                if (edges.Any(e => view.Map(e.From).DistanceTo(at) < 0.5 || view.Map(e.To).DistanceTo(at) < 0.5)) continue;
                var through = edges.Where(e => view.Map(e.From).DistanceTo(view.Map(e.To)) > 1 && new Segment(view.Map(e.From), view.Map(e.To)).DistanceTo(at) < Near).ToList();
                var isReached = through.Exists(e => IsReached(e, at, boxes, view));
                var distance = lines.Min(l => l.Line.DistanceTo(at));
                if (isReached) Assert.True(distance < Near, $"a line is missing at {at}, seen towards {view.ToViewer}");
                else Assert.True(distance > Near / 2, $"a hidden line is drawn at {at}, seen towards {view.ToViewer}");
            }
        }
    }

    private sealed record Edge(Point3 From, Point3 To, (Point3 Normal, Point3 Into)[] Faces);

    private static bool IsReached(Edge edge, Point2 at, List<Box3> boxes, Projection view)
    {
        var (a, b) = (view.Map(edge.From), view.Map(edge.To));
        var share = (at - a).Dot(b - a) / (b - a).Dot(b - a);
        var point = edge.From + (edge.To - edge.From) * share;
        return edge.Faces.Any(f => f.Normal.Dot(view.ToViewer) > 0 && !boxes.Exists(box => Blocks(box, point + f.Into * 0.02, view.ToViewer)));
    }

    // Slabs: a ray enters a box where it is between both planes of each axis.
    private static bool Blocks(Box3 box, Point3 from, Point3 direction)
    {
        var (near, far) = (1e-4, double.PositiveInfinity);
        for (var axis = 0; axis < 3; axis++)
        {
            var (p, d, low, high) = (from.Along(axis), direction.Along(axis), box.Min.Along(axis) + 1e-5, box.Max.Along(axis) - 1e-5);
            if (d == 0)
            {
                if (p <= low || p >= high) return false;
                continue;
            }

            var (t0, t1) = d > 0 ? ((low - p) / d, (high - p) / d) : ((high - p) / d, (low - p) / d);
            (near, far) = (Math.Max(near, t0), Math.Min(far, t1));
        }

        return near < far - 1e-6;
    }

    private static IEnumerable<Edge> Edges(Box3 box)
    {
        double[] min = [box.Min.X, box.Min.Y, box.Min.Z], max = [box.Max.X, box.Max.Y, box.Max.Z];
        Point3 Unit(int axis, double sign) => new(axis == 0 ? sign : 0, axis == 1 ? sign : 0, axis == 2 ? sign : 0);
        for (var axis = 0; axis < 3; axis++)
            foreach (var (high1, high2) in new[] { (false, false), (false, true), (true, false), (true, true) })
            {
                var (u, v) = ((axis + 1) % 3, (axis + 2) % 3);
                double[] from = [.. min], to = [.. min];
                to[axis] = max[axis];
                if (high1) from[u] = to[u] = max[u];
                if (high2) from[v] = to[v] = max[v];
                var (n1, n2) = (Unit(u, high1 ? 1 : -1), Unit(v, high2 ? 1 : -1));
                yield return new Edge(new(from[0], from[1], from[2]), new(to[0], to[1], to[2]), [(n1, n2 * -1), (n2, n1 * -1)]);
            }
    }
}
