using System.Collections.Immutable;
using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>
/// The LTYPE table. The names are the format's usual ones, because some readers draw by name and take an unknown one for unbroken.
/// </summary>
internal sealed class LinetypeRecords(RecordWriter records)
{
    private readonly TagWriter tags = records.Tags;

    /// <summary>What a pattern is called.</summary>
    public static string NameOf(LinePattern pattern) => pattern switch
    {
        LinePattern.Continuous => "Continuous",
        LinePattern.Dashed => "DASHED",
        LinePattern.Chain => "CENTER",
        LinePattern.DoubleDotChain => "PHANTOM",
        _ => throw new ArgumentOutOfRangeException(nameof(pattern)),
    };

    /// <summary>Writes the table with the unbroken line and the patterns used.</summary>
    public void Write(TablesSection tables, ImmutableArray<LinePattern> used)
    {
        var drawn = used.Remove(LinePattern.Continuous);
        tables.Table("LTYPE", SkeletonHandle.LinetypeTable, drawn.Length + (records.IsR12 ? 1 : 3));
        if (!records.IsR12)
        {
            Record(tables, "ByBlock", SkeletonHandle.ByBlock, "", []);
            Record(tables, "ByLayer", SkeletonHandle.ByLayer, "", []);
        }

        Record(tables, NameOf(LinePattern.Continuous), SkeletonHandle.Continuous, "Solid line", []);
        foreach (var pattern in drawn)
        {
            // Dashes and gaps in mm, after ISO 128-2 from memory, coarse enough for a drawing at full size.
            if (pattern == LinePattern.Dashed) Record(tables, NameOf(pattern), SkeletonHandle.Dashed, "Dashed __ __ __ __", [6, -3]);
            else if (pattern == LinePattern.Chain) Record(tables, NameOf(pattern), SkeletonHandle.Chain, "Center ____ _ ____ _", [12, -2.5, 1, -2.5]);
            else Record(tables, NameOf(pattern), SkeletonHandle.DoubleDotChain, "Phantom ____ _ _ ____ _ _", [12, -2.5, 1, -2.5, 1, -2.5]);
        }

        tables.End();
    }

    private void Record(TablesSection tables, string name, long handle, string description, ReadOnlySpan<double> elements)
    {
        tables.Record("LTYPE", "AcDbLinetypeTableRecord", handle, SkeletonHandle.LinetypeTable, records.Name(name));
        tags.Text(3, description);
        tags.Integer(72, 'A');
        tags.Integer(73, elements.Length);
        var length = 0.0;
        foreach (var element in elements) length += Math.Abs(element);
        records.Length(40, length);
        foreach (var element in elements)
        {
            records.Length(49, element);
            if (!records.IsR12) tags.Integer(74, 0);
        }
    }
}
