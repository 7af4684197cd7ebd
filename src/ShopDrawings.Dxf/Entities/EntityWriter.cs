using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Dxf;

/// <summary>Writes entities by their tables.</summary>
internal sealed class EntityWriter(RecordWriter records)
{
    // The tags between an entity's handle and its layer.
    private byte[] head = Head(SkeletonHandle.ModelSpaceRecord, paper: false);

    /// <summary>Says whose the following entities are: the record of a block, of model space (as without this call) or of paper space.</summary>
    public void Enter(long blockRecord, bool paper = false) => head = Head(blockRecord, paper);

    /// <summary>Writes one entity.</summary>
    /// <param name="type">Its table.</param>
    /// <param name="layer">The name of its layer, as the LAYER table spells it.</param>
    /// <param name="numbers">The numbers of its groups in the table's order, lengths in mm; repeated groups until the numbers end.</param>
    /// <param name="texts">The texts and names of its groups in the table's order.</param>
    /// <exception cref="ArgumentException">There are too few or too many values for the table.</exception>
    public void Write(EntityType type, string layer, scoped ReadOnlySpan<double> numbers, params ReadOnlySpan<string> texts)
    {
        var tags = records.Tags;
        tags.Put(type.Start.Span);
        if (!records.IsR12)
        {
            tags.Handle(5, records.NextHandle);
            tags.Put(head);
        }

        tags.Text(8, layer);
        foreach (var subclass in type.Subclasses)
        {
            if (!records.IsR12) tags.Put(subclass.Start.Span);
            Put(subclass.Groups, ref numbers, ref texts);
            while (!subclass.Repeated.IsEmpty && !numbers.IsEmpty) Put(subclass.Repeated, ref numbers, ref texts);
        }

        if (!numbers.IsEmpty || !texts.IsEmpty) throw new ArgumentException($"More values than {type.Name} has groups.", nameof(numbers));
    }

    private static byte[] Head(long owner, bool paper) =>
    [
        .. TagWriter.Line(330, owner.ToString("X", CultureInfo.InvariantCulture)), .. TagWriter.Line(100, "AcDbEntity"), .. paper ? TagWriter.Line(67, "1") : [],
    ];

    private void Put(ImmutableArray<Group> groups, ref ReadOnlySpan<double> numbers, ref ReadOnlySpan<string> texts)
    {
        foreach (var group in groups)
        {
            var count = group.Numbers;
            if (count == 0)
            {
                records.Tags.Text(group.Code, group.Type == GroupType.Name ? records.Name(texts[0]) : texts[0]);
                texts = texts[1..];
                continue;
            }

            var value = numbers[..count];
            numbers = numbers[count..];
            if (value[0] != group.Default && !(group.IsOptional && double.IsNaN(value[0])) && !(group.IsSinceR2000 && records.IsR12)) Put(group, value);
            for (var n = group.Each.IsEmpty || double.IsNaN(value[0]) ? 0 : (long)value[0]; n > 0; n--) Put(group.Each, ref numbers, ref texts);
        }
    }

    private void Put(Group group, ReadOnlySpan<double> value)
    {
        switch (group.Type)
        {
            case GroupType.Integer:
                records.Tags.Integer(group.Code, (long)value[0]);
                break;
            case GroupType.Real:
                records.Tags.Real(group.Code, value[0]);
                break;
            case GroupType.Fine:
                records.Tags.Fine(group.Code, value[0]);
                break;
            case GroupType.Length:
                records.Length(group.Code, value[0]);
                break;
            default:
                records.Length(group.Code, value[0]);
                records.Length(group.Code + 10, value[1]);
                if (group.Type == GroupType.Point) records.Tags.Zero(group.Code + 20);
                break;
        }
    }
}
