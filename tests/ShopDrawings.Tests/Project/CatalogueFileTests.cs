using System.Text;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Project;

/// <summary>Catalogues of a user's own: which part counts, and where their mistakes are reported.</summary>
public class CatalogueFileTests
{
    private const string Panel =
        """
        project: One part
        boards: {ply: {kind: plywood, thickness: 18}}
        panels: {board: {board: ply, length: 300, width: 200}}
        fittings: {part: {hardware: cable-clip, panel: board, at: [100, 100]}}

        """;

    private static string Clip(string diameter) => $"hardware: {{cable-clip: {{length: 20 mm, width: 12 mm, height: 10 mm, bores: [{{at: [0, 0], diameter: {diameter}}}]}}}}\n";

    [Fact]
    public void Later_catalogue_counts_before_an_earlier_one_and_the_project_before_all()
    {
        var files = Files(("a.yaml", Clip("3")), ("b.yaml", Clip("4")), ("empty-section.yaml", "screws: {}\n"));

        Assert.Equal(2, Diameter(Panel, files));
        Assert.Equal(3, Diameter(Panel + "catalogues: [a.yaml]\n", files));
        Assert.Equal(4, Diameter(Panel + "catalogues: [a.yaml, b.yaml, empty-section.yaml]\n", files));
        Assert.Equal(3, Diameter(Panel + "catalogues: [b.yaml, a.yaml]\n", files));
        Assert.Equal(5, Diameter(Panel + "catalogues: [a.yaml, b.yaml]\n" + Clip("5"), files));
    }

    [Fact]
    public void Catalogue_counts_in_its_own_unit()
    {
        var files = Files(("inches.yaml", "unit: in\n" + Clip("1/8")), ("bare.yaml", Clip("3")));

        Assert.Equal(3.175, Diameter(Panel + "catalogues: [inches.yaml]\n", files), 9);
        Assert.Equal(3, Diameter(Panel.Replace("thickness: 18", "thickness: 3/4", StringComparison.Ordinal) + "unit: in\ncatalogues: [bare.yaml]\n", files));
    }

    [Fact]
    public void Every_section_of_a_catalogue_is_used()
    {
        var screws = "screws: {wood-4x50: {diameter: 4, length: 55, head: 8, clearance: 4.5, edge-pilot: 3}}\n";
        var castors = "castors: {own: {height: 60, wheel-diameter: 40, tread-width: 18, offset: 20, plate-length: 60, plate-width: 50, hole-length: 45, hole-width: 35, hole-diameter: 6}}\n";
        var design = Fixtures.DesignOf(
            """
            project: A box on castors
            catalogues: [shop/parts.yaml]
            boards: {ply: {kind: plywood, thickness: 18}}
            cabinet: {width: 500, height: 400, depth: 400, board: ply, castors: {castor: own, brakes: none}}
            """, Files(("shop/parts.yaml", screws + castors)));

        Assert.All(design.Assembly.Joints, j => Assert.All(j.Fasteners, f => Assert.Equal(55, ((Screw)f.Fastener).Length.Value)));
        Assert.Equal(4, design.Assembly.Hardware.Count(h => h.Name == "own"));
    }

    [Fact]
    public void Mistakes_are_reported_in_the_file_that_has_them_and_all_at_once()
    {
        var files = Files(("a.yaml", "screws:\n  short: {diameter: 4}\n"), ("b.yaml", "# Nothing\nhinge: {}\n"));

        var mistakes = Fixtures.Mistakes("project: x\ncatalogues: [a.yaml, c.yaml, b.yaml]\nboard: {}\n", files);

        Assert.Equal(
            ["a.yaml(2,10)", "a.yaml(2,10)", "a.yaml(2,10)", "a.yaml(2,10)", "b.yaml(2,1)", "test.yaml(2,22)", "test.yaml(3,1)"],
            mistakes.Select(m => m.At.ToString()));
        Assert.EndsWith("the catalogue “c.yaml” cannot be read: there is none", mistakes[5].Message, StringComparison.Ordinal);
    }

    // A part that nothing uses is checked too.
    [Fact]
    public void Opening_that_is_none_is_reported_in_its_catalogue()
    {
        var files = Files(("a.yaml", "hardware:\n  vent: {length: 9, width: 9, height: 0, slots: [{from: [1, 1], to: [1, 1], width: 2}]}\n"));

        var mistake = Assert.Single(Fixtures.Mistakes(Panel + "catalogues: [a.yaml]\n", files));

        Assert.Equal("a.yaml(2,50)", mistake.At.ToString());
    }

    [Fact]
    public void Catalogue_without_any_sources_is_a_mistake_where_it_is_named()
    {
        var mistake = Assert.Single(Fixtures.Mistakes(Panel + "catalogues:\n  - parts.yaml\n"));

        Assert.Equal(("test.yaml(6,5)", "the catalogue “parts.yaml” cannot be read: no files were given beside the project file"), (mistake.At.ToString(), mistake.Message));
    }

    [Fact]
    public void Catalogue_that_is_too_large_is_a_mistake_where_it_is_named()
    {
        var mistake = Assert.Single(Fixtures.Mistakes(Panel + "catalogues: [parts.yaml]\n", Files(("parts.yaml", new string('#', Sources.LargestFile + 1)))));

        Assert.Equal(("test.yaml(5,14)", "the catalogue “parts.yaml” cannot be read: it has 4194305 bytes, and at most 4194304 are read"), (mistake.At.ToString(), mistake.Message));
    }

    [Fact]
    public void Catalogue_may_begin_with_a_byte_order_mark() => Assert.Equal(3, Diameter(Panel + "catalogues: [a.yaml]\n", Files(("a.yaml", "\ufeff" + Clip("3")))));

    private static double Diameter(string text, Sources files) => Fixtures.DesignOf(text, files).Assembly.Panel("board").Features.OfType<Bore>().Single().Diameter.Value;

    private static Sources Files(params (string Name, string Text)[] files) => new(name =>
        files.FirstOrDefault(f => f.Name == name).Text is { } text ? SourceFile.Of(Encoding.UTF8.GetBytes(text)) : SourceFile.Missing("there is none"));
}
