using System.Globalization;

namespace ShopDrawings.Dxf;

/// <summary>
/// The dimension styles of a file, one for each lettering height: the first that is used is the standard style, which the HEADER repeats.
/// </summary>
internal sealed class DimensionStyleTable
{
    // ISO 3098 lettering for shop drawings, where nothing says otherwise.
    private const double UsualHeight = 3.5;

    private readonly List<double> heights = [];
    private readonly Dictionary<long, string> names = [];

    /// <summary>Lettering height of the standard style, in mm.</summary>
    public double StandardHeight => heights is [var first, ..] ? first : UsualHeight;

    /// <summary>The styles beside the standard one: name and lettering height in mm.</summary>
    public IEnumerable<(string Name, double Height)> Others => heights.Skip(1).Select(h => (NameOf(h), h));

    /// <summary>How many there are beside the standard one.</summary>
    public int OtherCount => Math.Max(0, heights.Count - 1);

    /// <summary>Notes a height that is used. Heights that agree to a micrometre share a style.</summary>
    public void Use(double height)
    {
        var key = Micrometres(height);
        if (names.TryAdd(key, heights.Count == 0 ? RecordWriter.StandardName : "TEXT_" + key.ToString(CultureInfo.InvariantCulture) + "_UM")) heights.Add(height);
    }

    /// <summary>The style of a height that was used.</summary>
    public string NameOf(double height) => names[Micrometres(height)];

    private static long Micrometres(double height) => (long)Math.Round(height * 1000);
}
