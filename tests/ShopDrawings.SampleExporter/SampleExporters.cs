using System.Globalization;
using System.Text;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.SampleExporter;

/// <summary>What to saw, to take to the saw: <c>lists/cut-list.md</c>, a section for each board, equal panels on one line, the longest first.</summary>
public sealed class CutListExporter : IJobExporter
{
    /// <inheritdoc/>
    public string Format => "cut-list";

    /// <inheritdoc/>
    public IEnumerable<Output> Export(Job job) => [new("lists/cut-list.md", stream => stream.Write(Encoding.UTF8.GetBytes(List(job.Design))))];

    private static string List(Design design)
    {
        var list = new StringBuilder($"# {design.Assembly.Name}\n\nSawn sizes, length × width, in {design.Lengths.Statement}.\n");
        foreach (var board in design.Assembly.Panels.GroupBy(p => p.Board))
        {
            list.Append(CultureInfo.InvariantCulture, $"\n## {board.Key.Name}: {board.Key.Label}\n\n");
            foreach (var equal in board.GroupBy(p => (Length: Math.Round(p.CutLength.Value, 4), Width: Math.Round(p.CutWidth.Value, 4))).OrderByDescending(g => g.Key))
                list.Append(CultureInfo.InvariantCulture, $"- [ ] {equal.Count()} of {design.Lengths.Print(equal.Key.Length)} × {design.Lengths.Print(equal.Key.Width)}: {string.Join(", ", equal.Select(p => p.Id))}\n");
        }

        return list.ToString();
    }
}

/// <summary>A drawing as text, one entity a line: layer, kind, and coordinates in mm. Made for reading and for comparing.</summary>
public sealed class OutlineTextExporter : IDrawingExporter
{
    /// <inheritdoc/>
    public string Format => "outline-text";

    /// <inheritdoc/>
    public void Write(Drawing drawing, Stream output)
    {
        foreach (var entity in drawing.Entities) output.Write(Encoding.UTF8.GetBytes($"{entity.Layer.Name} {Describe(entity)}\n"));
    }

    private static string Describe(Entity entity) => entity switch
    {
        ContourEntity contour => $"contour {string.Join(' ', contour.Contour.Segments.Select(s => s.IsLine ? $"line-to {At(s.End)}" : $"arc-to {At(s.End)} by {At(s.Middle)}"))}",
        SegmentEntity { Segment: var s } => s.IsLine ? $"line {At(s.Start)} to {At(s.End)}" : $"arc {At(s.Start)} to {At(s.End)} by {At(s.Middle)}",
        CircleEntity circle => $"circle {At(circle.Centre)} radius {Number(circle.Radius)}",
        PointEntity point => $"point {At(point.Position)}",
        TextEntity text => $"text {At(text.Position)} {text.Text}",
        _ => $"{entity.GetType().Name} {At(entity.Bounds.Min)} to {At(entity.Bounds.Max)}",
    };

    private static string At(Point2 point) => $"{Number(point.X)},{Number(point.Y)}";

    private static string Number(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);
}
