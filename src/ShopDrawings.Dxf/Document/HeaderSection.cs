using ShopDrawings.Kernel;

namespace ShopDrawings.Dxf;

/// <summary>The HEADER section: release, unit, extents, and what readers take from nowhere else.</summary>
internal sealed class HeaderSection(RecordWriter records)
{
    private readonly TagWriter tags = records.Tags;

    /// <summary>Writes the section.</summary>
    /// <param name="extents">The box of what is drawn, in mm.</param>
    /// <param name="limits">The box of the paper, in mm.</param>
    /// <param name="handSeed">A handle above every handle of the file.</param>
    /// <param name="look">What the standard dimension style says.</param>
    public void Write(Box2 extents, Box2 limits, long handSeed, DimensionLook look)
    {
        Variable("$ACADVER", 1, records.Release switch { DxfRelease.R12 => "AC1009", DxfRelease.R2010 => "AC1024", _ => "AC1015" });
        Variable("$DWGCODEPAGE", 3, "ANSI_1252");
        if (!records.IsR12)
        {
            tags.Text(9, "$HANDSEED");
            tags.Handle(5, handSeed);
            Variable("$LWDISPLAY", 290, 1);
        }

        Variable("$INSUNITS", 70, records.Unit.InsUnits());
        Variable("$MEASUREMENT", 70, records.Unit.Measurement());
        Variable("$LUNITS", 70, 2);
        Variable("$LUPREC", 70, 4);
        Corner("$EXTMIN", extents.Min, flat: false);
        Corner("$EXTMAX", extents.Max, flat: false);
        Corner("$LIMMIN", limits.Min, flat: true);
        Corner("$LIMMAX", limits.Max, flat: true);
        tags.Text(9, "$LTSCALE");
        tags.Real(40, 1);
        Variable("$CLAYER", 8, "0");
        Dimensions(look);
    }

    private void Dimensions(DimensionLook look)
    {
        Variable("$DIMSTYLE", 2, records.Name(RecordWriter.StandardName));
        foreach (var (name, _, value) in DimensionVariables.Factors(look))
        {
            tags.Text(9, name);
            tags.Real(40, value);
        }

        foreach (var (name, _, value) in DimensionVariables.Lengths(look.Height))
        {
            tags.Text(9, name);
            records.Length(40, value);
        }

        foreach (var (name, _, value) in DimensionVariables.Switches(look, records.Unit)) Variable(name, 70, value);
        if (records.IsR12) return;
        foreach (var (name, _, value) in DimensionVariables.LaterSwitches) Variable(name, 70, value);
    }

    private void Variable(string name, int code, string value)
    {
        tags.Text(9, name);
        tags.Text(code, value);
    }

    private void Variable(string name, int code, int value)
    {
        tags.Text(9, name);
        tags.Integer(code, value);
    }

    private void Corner(string name, Point2 corner, bool flat)
    {
        tags.Text(9, name);
        if (flat) records.PlanePoint(10, corner.X, corner.Y);
        else records.Point(10, corner.X, corner.Y);
    }
}
