using System.Globalization;
using ShopDrawings.Drafting;

namespace ShopDrawings.Dxf;

/// <summary>What a dimension style says of its dimensions.</summary>
/// <param name="Height">Lettering height in mm.</param>
/// <param name="Factor">How many mm of what is drawn are one mm of the drawing.</param>
/// <param name="Standard">The practice that decides where the text stands.</param>
internal readonly record struct DimensionLook(double Height, double Factor, DrawingStandard Standard);

/// <summary>
/// The dimension styles of a file, one for each look that is used: the first is the standard style, which the HEADER repeats.
/// </summary>
internal sealed class DimensionStyleTable
{
    // ISO 3098 lettering for shop drawings, where nothing says otherwise.
    private static readonly DimensionLook Usual = new(3.5, 1, DrawingStandard.Iso);

    private readonly List<DimensionLook> looks = [];
    private readonly Dictionary<(long Height, long Factor, string Standard), string> names = [];

    /// <summary>What the standard style says.</summary>
    public DimensionLook StandardLook => looks is [var first, ..] ? first : Usual;

    /// <summary>The styles beside the standard one.</summary>
    public IEnumerable<(string Name, DimensionLook Look)> Others => looks.Skip(1).Select(l => (NameOf(l), l));

    /// <summary>How many there are beside the standard one.</summary>
    public int OtherCount => Math.Max(0, looks.Count - 1);

    /// <summary>The look of a dimension.</summary>
    public static DimensionLook Of(Dimension dimension) => new(dimension.Height, dimension.Factor, dimension.Standard);

    /// <summary>The look of a leader, of whose style only the arrow is seen.</summary>
    public static DimensionLook Of(LeaderEntity leader) => new(leader.Height, 1, DrawingStandard.Iso);

    /// <summary>Notes a look that is used. Heights that agree to a micrometre and factors that agree to a thousandth share a style.</summary>
    public void Use(DimensionLook look)
    {
        var key = Key(look);
        var factor = key.Factor == 1000 ? "" : string.Create(CultureInfo.InvariantCulture, $"_BY_{key.Factor}");
        var practice = look.Standard == DrawingStandard.Iso ? "" : "_" + look.Standard.Name;
        if (names.TryAdd(key, looks.Count == 0 ? RecordWriter.StandardName : string.Create(CultureInfo.InvariantCulture, $"TEXT_{key.Height}_UM{factor}{practice}"))) looks.Add(look);
    }

    /// <summary>The style of a look that was used.</summary>
    public string NameOf(DimensionLook look) => names[Key(look)];

    private static (long Height, long Factor, string Standard) Key(DimensionLook look) => (Thousandths(look.Height), Thousandths(look.Factor), look.Standard.Name);

    private static long Thousandths(double value) => (long)Math.Round(value * 1000);
}
