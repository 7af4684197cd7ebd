using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.Print;
using ShopDrawings.Tests.Svg;

namespace ShopDrawings.Tests.Print;

/// <summary>What holds for both printed formats.</summary>
public class PrintTests
{
    private static readonly IDrawingExporter[] Exporters = [new PdfExporter(), new PngExporter { DotsPerInch = 40 }];

    [Fact]
    public void Formats_have_their_names() => Assert.Equal(["pdf", "png"], Exporters.Select(e => e.Format));

    [Fact]
    public void Bytes_are_the_same_whatever_the_culture_and_the_thread()
    {
        var expected = PrintFiles.Both(SvgSample.Sheet());
        var before = CultureInfo.CurrentCulture;
        var foreign = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (foreign.NumberFormat.NumberDecimalSeparator, foreign.NumberFormat.NumberGroupSeparator, foreign.NumberFormat.NegativeSign) = (",", ".", "\u2212");
        try
        {
            CultureInfo.CurrentCulture = foreign;
            Assert.Equal(expected, PrintFiles.Both(SvgSample.Sheet()));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        var parallel = new byte[16][][];
        Parallel.For(0, parallel.Length, i => parallel[i] = PrintFiles.Both(SvgSample.Sheet()));
        Assert.All(parallel, bytes => Assert.Equal(expected, bytes));
    }

    [Fact]
    public void Output_stays_open_and_is_written_from_where_it_stands() => Assert.All(Exporters, exporter =>
    {
        using var stream = new MemoryStream();
        stream.WriteByte(1);

        exporter.Write(SvgSample.Sheet(), stream);

        Assert.True(stream.CanWrite);
        Assert.Equal(PrintFiles.Written(s => exporter.Write(SvgSample.Sheet(), s)), stream.ToArray()[1..]);
    });

    public static TheoryData<string, Func<double, Entity>> Numbers => new()
    {
        { "radius", wrong => new CircleEntity(PrintFiles.Outline, default, wrong) },
        { "place", wrong => new PointEntity(PrintFiles.Outline, new(wrong, 0)) },
        { "end", wrong => new SegmentEntity(PrintFiles.Outline, new(new(0, 0), new(5, wrong))) },
        { "arrow", wrong => new ArrowEntity(PrintFiles.Outline, default, new(1, 1), new(wrong, 1)) },
        { "height", wrong => new TextEntity(PrintFiles.Notes, default, wrong, "x") },
        { "text", wrong => new TextEntity(PrintFiles.Notes, new(0, wrong), 5, "x", Anchor.Middle) },
        { "angle", wrong => new TextEntity(PrintFiles.Notes, default, 5, "x", Anchor.Middle, wrong) },
        { "ellipse", wrong => new EllipseEntity(PrintFiles.Outline, default, new(0, wrong), 0.5) },
        { "ratio", wrong => new EllipseEntity(PrintFiles.Outline, default, new(0, 5), wrong) },
        { "parameter", wrong => new EllipseEntity(PrintFiles.Outline, default, new(0, 5), 0.5, 0, wrong) },
        { "leader", wrong => new LeaderEntity(PrintFiles.Notes, [new(0, 0), new(5, 5), new(wrong, 5)], 5) },
        { "dimension", wrong => new LinearDimension(PrintFiles.Notes, default, new(100, 0), new(0, wrong), false, "100", 3.5) },
    };

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Number_that_cannot_be_drawn_is_refused(string what, Func<double, Entity> with)
    {
        Assert.NotEmpty(what);
        foreach (var wrong in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity, 1e7])
            Assert.All(Exporters, exporter => Assert.Throws<ArgumentException>(() => exporter.Write(PrintFiles.Sheet(with(wrong)), Stream.Null)));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Bulge_that_cannot_be_drawn_is_refused(double wrong) => Assert.All(Exporters, exporter =>
        Assert.Throws<ArgumentException>(() => exporter.Write(PrintFiles.Sheet(new SegmentEntity(PrintFiles.Outline, new(new(0, 0), new(5, 0), wrong))), Stream.Null)));

    [Theory]
    [InlineData(double.NaN, 100)]
    [InlineData(100, double.PositiveInfinity)]
    public void Paper_that_cannot_be_made_is_refused(double width, double height) => Assert.All(Exporters, exporter =>
        Assert.Throws<ArgumentException>(() => exporter.Write(new Drawing("Any", "", new Point2(width, height), []), Stream.Null)));

    [Fact]
    public void Blank_text_draws_nothing()
    {
        var bare = PrintFiles.Both(PrintFiles.Sheet(new PointEntity(PrintFiles.Notes, new(50, 50))));

        Assert.All(["", " \t"], text => Assert.Equal(bare, PrintFiles.Both(PrintFiles.Sheet(new PointEntity(PrintFiles.Notes, new(50, 50)), new TextEntity(PrintFiles.Notes, new(20, 20), 5, text)))));
    }

    // Whoever prints nothing waits for nothing: the packages take a tenth of a second and more to start.
    [Fact]
    public void Packages_are_loaded_when_something_is_printed()
    {
        var context = new Apart();
        var assembly = context.LoadFromAssemblyPath(typeof(PdfExporter).Assembly.Location);
        var exporters = new[] { nameof(PdfExporter), nameof(PngExporter) }.Select(name => (IDrawingExporter)Activator.CreateInstance(assembly.GetType($"ShopDrawings.Print.{name}")!)!).ToList();
        Assert.Equal(["pdf", "png"], exporters.Select(e => e.Format));
        Assert.Equal(["ShopDrawings.Print"], context.Assemblies.Select(a => a.GetName().Name));

        foreach (var exporter in exporters) exporter.Write(PrintFiles.Sheet(), Stream.Null);

        Assert.Superset(new HashSet<string?> { "PdfSharp", "SkiaSharp", "SixLabors.ImageSharp" }, context.Assemblies.Select(a => a.GetName().Name).ToHashSet());
    }

    // Loads the printing project and its packages anew, and shares the rest.
    private sealed class Apart() : AssemblyLoadContext("apart")
    {
        protected override System.Reflection.Assembly? Load(AssemblyName assemblyName) =>
            assemblyName.Name is "PdfSharp" or "SkiaSharp" or "SixLabors.ImageSharp" ? LoadFromAssemblyPath(Path.Combine(AppContext.BaseDirectory, assemblyName.Name + ".dll")) : null;
    }
}
