using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>A whole file, section by section. All of it is written always and from here: strict readers discard a drawing that lacks a piece.</summary>
internal static class DxfDocument
{
    /// <summary>Writes a surveyed drawing.</summary>
    public static void Write(Drawing drawing, Survey survey, LayerTable layers, SheetLayout? layout, Stream output)
    {
        var tags = new TagWriter(output);
        var blocks = new BlockTable(drawing.Blocks, survey.Dimensions);
        var styles = survey.Styles;
        var records = new RecordWriter(tags, survey.Release, survey.Unit, SkeletonHandle.FirstFree + blocks.Handles);
        var space = new SpaceWriter(records, layers, blocks, styles, survey.Form);
        var handSeed = SkeletonHandle.FirstFree + blocks.Handles + layers.Pens.Length + styles.OtherCount + survey.Handles + PaperSheet.HandlesOf(layout);
        var paper = drawing.Page is { } page ? new Box2(default, page) : (Box2?)null;
        var extents = survey.Extents ?? paper ?? new Box2(default, new Point2(1, 1));

        Section("HEADER", () => new HeaderSection(records).Write(extents, paper ?? extents, handSeed, styles.StandardLook));
        if (!records.IsR12) Section("CLASSES", () => Classes(records));
        Section("TABLES", () => new TablesSection(records, layers, blocks, styles).Write(Framed(extents)));
        Section("BLOCKS", () => Blocks(drawing, records, blocks, space));
        Section("ENTITIES", () => Entities(drawing, space, layout, extents.Centre));
        if (!records.IsR12) Section("OBJECTS", () => new ObjectsSection(records, layout).Write());
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

    private static void Entities(Drawing drawing, SpaceWriter space, SheetLayout? layout, Point2 view)
    {
        space.Enter(SkeletonHandle.ModelSpaceRecord);
        foreach (var entity in drawing.Entities) space.Write(entity);
        if (layout is not null) new PaperSheet(layout).Write(space, view);
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

    // Goes through the dimensions once more, in the order of the entities: their blocks come before them.
    private static void Blocks(Drawing drawing, RecordWriter records, BlockTable blocks, SpaceWriter space)
    {
        const int Anonymous = 1;
        if (!records.IsR12)
        {
            Block("*Model_Space", SkeletonHandle.ModelSpaceRecord, SkeletonHandle.ModelSpaceBlock, SkeletonHandle.ModelSpaceEnd, 0, [], isPaper: false);
            Block("*Paper_Space", SkeletonHandle.PaperSpaceRecord, SkeletonHandle.PaperSpaceBlock, SkeletonHandle.PaperSpaceEnd, 0, [], isPaper: true);
        }

        var number = 0L;
        foreach (var block in drawing.Blocks) Next(0, block.Entities);
        foreach (var entity in drawing.Entities)
        {
            if (entity is Dimension dimension) Next(Anonymous, DimensionGraphics.Of(dimension));
        }

        void Next(int flag, IEnumerable<Entity> content)
        {
            Block(blocks.NameOf(number), BlockTable.Record(number), BlockTable.Begin(number), BlockTable.End(number), flag, content, isPaper: false);
            number++;
        }

        void Block(string name, long record, long begin, long end, int flag, IEnumerable<Entity> content, bool isPaper)
        {
            var tags = records.Tags;
            Head("BLOCK", begin, "AcDbBlockBegin");
            tags.Text(2, name);
            tags.Integer(70, flag);
            records.Point(10, 0, 0);
            tags.Text(3, name);
            tags.Text(1, "");
            space.Enter(record);
            foreach (var entity in content) space.Write(entity);
            Head("ENDBLK", end, "AcDbBlockEnd");

            void Head(string kind, long handle, string marker)
            {
                records.Start(kind, handle, record);
                records.Marker("AcDbEntity");
                if (isPaper) tags.Integer(67, 1);
                tags.Text(8, "0");
                records.Marker(marker);
            }
        }
    }
}
