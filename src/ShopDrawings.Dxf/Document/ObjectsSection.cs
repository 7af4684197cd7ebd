using System.Globalization;

namespace ShopDrawings.Dxf;

/// <summary>
/// The OBJECTS section of R2000 and later: the dictionaries, the layouts of model and paper, and the plot style every layer points to.
/// Free readers do without; strict ones discard a drawing that lacks one of them.
/// </summary>
internal sealed class ObjectsSection(RecordWriter records, SheetLayout? layout)
{
    // Without a sheet asked for, the empty one beside the model is A3 across.
    private static readonly SheetLayout Unused = new(420, 297, 1);

    private readonly SheetLayout sheet = layout ?? Unused;

    // Paper is measured in mm, or in inches where the file is and something stands on it.
    private readonly bool isInInches = layout is not null && records.Unit == DrawingUnit.Inch;

    private readonly TagWriter tags = records.Tags;

    /// <summary>Writes the section.</summary>
    public void Write()
    {
        const string Dictionary = "DICTIONARY";
        Entries(Dictionary, SkeletonHandle.RootDictionary, SkeletonHandle.None,
            ("ACAD_GROUP", SkeletonHandle.GroupDictionary), ("ACAD_LAYOUT", SkeletonHandle.LayoutDictionary),
            ("ACAD_PLOTSETTINGS", SkeletonHandle.PlotSettingsDictionary), ("ACAD_PLOTSTYLENAME", SkeletonHandle.PlotStyleDictionary));
        Entries(Dictionary, SkeletonHandle.GroupDictionary, SkeletonHandle.RootDictionary);
        Entries(Dictionary, SkeletonHandle.LayoutDictionary, SkeletonHandle.RootDictionary,
            ("Layout1", SkeletonHandle.PaperLayout), ("Model", SkeletonHandle.ModelLayout));
        Entries(Dictionary, SkeletonHandle.PlotSettingsDictionary, SkeletonHandle.RootDictionary);
        Entries("ACDBDICTIONARYWDFLT", SkeletonHandle.PlotStyleDictionary, SkeletonHandle.RootDictionary, ("Normal", SkeletonHandle.NormalPlotStyle));
        tags.Text(100, "AcDbDictionaryWithDefault");
        tags.Handle(340, SkeletonHandle.NormalPlotStyle);
        records.Start("ACDBPLACEHOLDER", SkeletonHandle.NormalPlotStyle, SkeletonHandle.PlotStyleDictionary);

        // Flags of PLOTSETTINGS: lineweights 128, plot styles 32, viewports first 512, and for the model 1024, for paper the standard scale 16.
        Layout("Layout1", SkeletonHandle.PaperLayout, SkeletonHandle.PaperSpaceRecord, 1, 512 + 128 + 32 + 16);
        Layout("Model", SkeletonHandle.ModelLayout, SkeletonHandle.ModelSpaceRecord, 0, 1024 + 512 + 128 + 32);
    }

    private void Entries(string kind, long handle, long owner, params ReadOnlySpan<(string Name, long Handle)> entries)
    {
        records.Start(kind, handle, owner, "AcDbDictionary");
        tags.Integer(281, 1);
        foreach (var entry in entries)
        {
            tags.Text(3, entry.Name);
            tags.Handle(350, entry.Handle);
        }
    }

    private void Layout(string name, long handle, long blockRecord, int tab, int flags)
    {
        records.Start("LAYOUT", handle, SkeletonHandle.LayoutDictionary, "AcDbPlotSettings");
        PlotSettings(flags);
        tags.Text(100, "AcDbLayout");
        tags.Text(1, name);
        tags.Integer(70, 1);
        tags.Integer(71, tab);
        Point(10, 0, 0);
        Point(11, OnPaper(sheet.Width), OnPaper(sheet.Height));
        Point(12, 0, 0, 0);
        Point(14, 0, 0, 0);
        Point(15, OnPaper(sheet.Width), OnPaper(sheet.Height), 0);
        tags.Real(146, 0);
        Point(13, 0, 0, 0);
        Point(16, 1, 0, 0);
        Point(17, 0, 1, 0);
        tags.Integer(76, 0);
        tags.Handle(330, blockRecord);
    }

    private double OnPaper(double length) => isInInches ? records.InUnits(length) : length;

    // Paper size and margins are mm, whatever its unit (group 72: 0 inches, 1 mm).
    private void PlotSettings(int flags)
    {
        const double SideMargin = 7.5, EndMargin = 20;
        tags.Text(1, "");
        tags.Text(2, "none_device");
        tags.Text(4, layout is null ? "ISO_A3_(420.00_x_297.00_MM)" : string.Create(CultureInfo.InvariantCulture, $"CUSTOM_({sheet.Width:0.00}_x_{sheet.Height:0.00}_MM)"));
        tags.Text(6, "");
        ReadOnlySpan<double> margins = [SideMargin, EndMargin, SideMargin, EndMargin, sheet.Width, sheet.Height, 0, 0, 0, 0];
        for (var i = 0; i < margins.Length; i++) tags.Real(40 + i, margins[i]);
        ReadOnlySpan<double> windowAndScale = [0, 0, 1, 1];
        for (var i = 0; i < windowAndScale.Length; i++) tags.Real(140 + i, windowAndScale[i]);
        tags.Integer(70, flags);
        tags.Integer(72, isInInches ? 0 : 1);
        tags.Integer(73, 0);
        tags.Integer(74, 0);
        tags.Text(7, "");
        tags.Integer(75, 16);       // standard scale 1:1
        tags.Real(147, 1);
        tags.Real(148, 0);
        tags.Real(149, 0);
    }

    private void Point(int code, params ReadOnlySpan<double> coordinates)
    {
        foreach (var coordinate in coordinates)
        {
            tags.Real(code, coordinate);
            code += 10;
        }
    }
}
