namespace ShopDrawings.Yaml;

/// <summary>Finds the word someone meant.</summary>
internal static class Spelling
{
    /// <summary>A question such as <c>; did you mean “width”?</c>, or nothing where no known word is near.</summary>
    public static string DidYouMean(string word, IEnumerable<string> known) => Nearest(word, known) is { } near ? $"; did you mean “{near}”?" : "";

    /// <summary>The known word nearest to what was written, or nothing where none is near.</summary>
    public static string? Nearest(string word, IEnumerable<string> known)
    {
        var best = known.Select(k => (Word: k, Distance: Distance(word.ToLowerInvariant(), k.ToLowerInvariant()))).OrderBy(k => k.Distance).FirstOrDefault();
        return best.Word is not null && best.Distance <= Math.Max(1, Math.Min(word.Length, best.Word.Length) / 3 + 1) && best.Distance < best.Word.Length
            ? best.Word
            : null;
    }

    // Edits to get from one word to the other: insert, delete, replace, swap two neighbours (optimal string alignment).
    private static int Distance(string a, string b)
    {
        if (a.Length > 60) return int.MaxValue;
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++) d[i, 0] = i;
        for (var j = 0; j <= b.Length; j++) d[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
            for (var j = 1; j <= b.Length; j++)
            {
                var replace = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(replace, Math.Min(d[i - 1, j], d[i, j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }

        return d[a.Length, b.Length];
    }
}
