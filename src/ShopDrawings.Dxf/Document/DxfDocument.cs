using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>A whole file, section by section. All of it is written always and from here: strict readers discard a drawing that lacks a piece.</summary>
internal static class DxfDocument
{
    /// <summary>Writes a surveyed drawing.</summary>
    public static void Write(Drawing drawing, Survey survey, LayerTable layers, Stream output)
    {
        var tags = new TagWriter(output);
        var records = new RecordWriter(tags, survey.Release, survey.Unit);
        var paper = drawing.Page is { } page ? new Box2(default, page) : (Box2?)null;
        var extents = survey.Extents ?? paper ?? new Box2(default, new Point2(1, 1));

        Section("HEADER", () => new HeaderSection(records).Write(extents, paper ?? extents, SkeletonHandle.FirstFree + layers.Pens.Length + survey.Handles));
        if (!records.IsR12) Section("CLASSES", () => Classes(records));
        Section("TABLES", () => new TablesSection(records, layers).Write(Framed(extents)));
        Section("BLOCKS", () => Blocks(records));
        Section("ENTITIES", () => Entities(drawing, new ModelSpace(records, layers)));
        if (!records.IsR12) Section("OBJECTS", () => new ObjectsSection(records).Write());
        tags.Text(0, "EOF");
        tags.Flush();

        void Section(string name, Action content)
        {
            tags.Text(0, "SECTION");
            tags.Text(2, name);
            content();
            tags.Text(0, "ENDSEC");
        }
    }

    // A margin around what is shown first, and never a view without size.
    private static Box2 Framed(Box2 extents) => extents.Grown(Math.Max(1, 0.05 * Math.Max(extents.Width, extents.Height)));

    private static void Entities(Drawing drawing, ModelSpace modelSpace)
    {
        foreach (var entity in drawing.Entities) modelSpace.Write(entity);
    }

    private static void Classes(RecordWriter records)
    {
        var tags = records.Tags;
        foreach (var (record, name) in ((string, string)[])
            [("ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault"), ("ACDBPLACEHOLDER", "AcDbPlaceHolder"), ("LAYOUT", "AcDbLayout")])
        {
            tags.Text(0, "CLASS");
            tags.Text(1, record);
            tags.Text(2, name);
            tags.Text(3, "ObjectDBX Classes");
            tags.Integer(90, 0);
            if (records.Release == DxfRelease.R2010) tags.Integer(91, record == "LAYOUT" ? 2 : 1);      // how many there are; since R2004
            tags.Integer(280, 0);
            tags.Integer(281, 0);
        }
    }

    private static void Blocks(RecordWriter records)
    {
        if (records.IsR12) return;
        Block("*Model_Space", SkeletonHandle.ModelSpaceRecord, SkeletonHandle.ModelSpaceBlock, SkeletonHandle.ModelSpaceEnd, isPaper: false);
        Block("*Paper_Space", SkeletonHandle.PaperSpaceRecord, SkeletonHandle.PaperSpaceBlock, SkeletonHandle.PaperSpaceEnd, isPaper: true);

        void Block(string name, long record, long begin, long end, bool isPaper)
        {
            var tags = records.Tags;
            Head("BLOCK", begin, "AcDbBlockBegin");
            tags.Text(2, name);
            tags.Integer(70, 0);
            records.Point(10, 0, 0);
            tags.Text(3, name);
            tags.Text(1, "");
            Head("ENDBLK", end, "AcDbBlockEnd");

            void Head(string kind, long handle, string marker)
            {
                records.Start(kind, handle, record, "AcDbEntity");
                if (isPaper) tags.Integer(67, 1);
                tags.Text(8, "0");
                tags.Text(100, marker);
            }
        }
    }
}
