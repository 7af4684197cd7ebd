using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The TABLES section, all nine tables in the order readers want; R12 has no BLOCK_RECORD.</summary>
internal sealed class TablesSection(RecordWriter records, LayerTable layers, BlockTable blocks, DimensionStyleTable styles)
{
    private readonly TagWriter tags = records.Tags;

    /// <summary>Writes the section.</summary>
    /// <param name="view">The box a reader shows first, in mm.</param>
    public void Write(Box2 view)
    {
        Viewports(view);
        new LinetypeRecords(records).Write(this, [.. layers.Pens.Select(l => l.Pen.Pattern).Distinct().Order()]);
        Layers();
        TextStyles();
        Table("VIEW", SkeletonHandle.ViewTable, 0);
        End();
        Table("UCS", SkeletonHandle.UcsTable, 0);
        End();
        Table("APPID", SkeletonHandle.AppIdTable, 1);
        Record("APPID", "AcDbRegAppTableRecord", SkeletonHandle.AppId, SkeletonHandle.AppIdTable, "ACAD");
        End();
        DimensionStyles();
        if (!records.IsR12) BlockRecords();
    }

    /// <summary>Begins a table.</summary>
    public void Table(string name, long handle, long count)
    {
        tags.Text(0, "TABLE");
        tags.Text(2, name);
        if (!records.IsR12)
        {
            tags.Handle(5, handle);
            tags.Handle(330, SkeletonHandle.None);
            tags.Text(100, "AcDbSymbolTable");
        }

        tags.Integer(70, count);
        if (name == "DIMSTYLE") records.Marker("AcDbDimStyleTable");
    }

    /// <summary>Begins a record of a table: up to its name and flags.</summary>
    public void Record(string kind, string marker, long handle, long table, string name)
    {
        records.Start(kind, handle, table, "AcDbSymbolTableRecord", marker);
        tags.Text(2, name);
        if (kind != "BLOCK_RECORD") tags.Integer(70, 0);
    }

    /// <summary>Ends a table.</summary>
    public void End() => tags.Text(0, "ENDTAB");

    private void Viewports(Box2 view)
    {
        const double Aspect = 1.5;
        Table("VPORT", SkeletonHandle.ViewportTable, 1);
        Record("VPORT", "AcDbViewportTableRecord", SkeletonHandle.ActiveViewport, SkeletonHandle.ViewportTable, records.Name("*Active"));
        foreach (var (code, x, y) in ((int, double, double)[])[(10, 0, 0), (11, 1, 1)])     // all of the window
        {
            tags.Real(code, x);
            tags.Real(code + 10, y);
        }

        records.PlanePoint(12, view.Centre.X, view.Centre.Y);
        foreach (var code in (int[])[13, 14, 15]) records.PlanePoint(code, code == 13 ? 0 : 10, code == 13 ? 0 : 10);   // snap and grid
        foreach (var (code, z) in ((int, double)[])[(16, 1), (17, 0)])      // seen from above
        {
            tags.Real(code, 0);
            tags.Real(code + 10, 0);
            tags.Real(code + 20, z);
        }

        records.Length(40, Math.Max(view.Height, view.Width / Aspect));
        tags.Real(41, Aspect);
        tags.Real(42, 50);      // lens length
        foreach (var code in (int[])[43, 44, 50, 51]) tags.Real(code, 0);
        foreach (var (code, value) in ((int, int)[])[(71, 0), (72, 1000), (73, 1), (74, 3), (75, 0), (76, 0), (77, 0), (78, 0)]) tags.Integer(code, value);
        End();
    }

    private void Layers()
    {
        const int ThinBlack = 7;
        Table("LAYER", SkeletonHandle.LayerTable, layers.Pens.Length + 1);
        Layer("0", SkeletonHandle.LayerZero, new Pen(0.25, LinePattern.Continuous, ThinBlack, "#000000"));
        foreach (var (name, pen) in layers.Pens) Layer(name, records.NextHandle, pen);
        End();
    }

    private void Layer(string name, long handle, Pen pen)
    {
        Record("LAYER", "AcDbLayerTableRecord", handle, SkeletonHandle.LayerTable, name);
        tags.Integer(62, pen.ColourIndex);
        tags.Text(6, records.Name(LinetypeRecords.NameOf(pen.Pattern)));
        if (records.IsR12) return;
        tags.Integer(370, Lineweight.Nearest(pen.WidthMm));
        tags.Handle(390, SkeletonHandle.NormalPlotStyle);       // without it strict readers discard the drawing
    }

    private void TextStyles()
    {
        Table("STYLE", SkeletonHandle.StyleTable, 1);
        Record("STYLE", "AcDbTextStyleTableRecord", SkeletonHandle.StandardStyle, SkeletonHandle.StyleTable, records.Name(RecordWriter.StandardName));
        tags.Real(40, 0);       // each text has its own height
        tags.Real(41, 1);
        tags.Real(50, 0);
        tags.Integer(71, 0);
        records.Length(42, 2.5);
        tags.Text(3, "txt");
        tags.Text(4, "");
        End();
    }

    private void DimensionStyles()
    {
        Table("DIMSTYLE", SkeletonHandle.DimensionStyleTable, 1 + styles.OtherCount);
        DimensionStyle(RecordWriter.StandardName, SkeletonHandle.StandardDimensionStyle, styles.StandardLook);
        foreach (var (name, look) in styles.Others) DimensionStyle(name, records.NextHandle, look);
        End();
    }

    private void DimensionStyle(string name, long handle, DimensionLook look)
    {
        Record("DIMSTYLE", "AcDbDimStyleTableRecord", handle, SkeletonHandle.DimensionStyleTable, records.Name(name));
        foreach (var (_, code, value) in DimensionVariables.Factors(look)) tags.Real(code, value);
        foreach (var (_, code, value) in DimensionVariables.Lengths(look.Height)) records.Length(code, value);
        foreach (var (_, code, value) in DimensionVariables.Switches(look, records.Unit)) tags.Integer(code, value);
        if (records.IsR12) return;
        foreach (var (_, code, value) in DimensionVariables.LaterSwitches) tags.Integer(code, value);
        tags.Handle(340, SkeletonHandle.StandardStyle);
    }

    private void BlockRecords()
    {
        Table("BLOCK_RECORD", SkeletonHandle.BlockRecordTable, 2 + blocks.Count);
        Block("*Model_Space", SkeletonHandle.ModelSpaceRecord, SkeletonHandle.ModelLayout);
        Block("*Paper_Space", SkeletonHandle.PaperSpaceRecord, SkeletonHandle.PaperLayout);
        for (long i = 0; i < blocks.Count; i++) Block(blocks.NameOf(i), BlockTable.Record(i), SkeletonHandle.None);
        End();

        void Block(string name, long handle, long layout)
        {
            Record("BLOCK_RECORD", "AcDbBlockTableRecord", handle, SkeletonHandle.BlockRecordTable, name);
            tags.Handle(340, layout);
        }
    }
}
