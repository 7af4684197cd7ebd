using System.Text;
using CsCheck;

namespace ShopDrawings.Tests.Project;

/// <summary>Whatever comes, every call returns: a value, mistakes or findings, never an exception.</summary>
public class FuzzTests
{
    private static readonly string[] Fixtures = [.. Tests.Fixtures.Names.Select(n => Tests.Fixtures.Text(n.Data))];

    private static readonly string Catalogue = Tests.Fixtures.Text("catalogues/drying-parts");

    // A fixture that uses the catalogue.
    private static readonly string Named = Tests.Fixtures.Text("drying-cabinet");

    private static readonly string[] Tokens =
    [
        "0", "-1", "1", "3", "18", "90", "200", "600", "1e3", "1/2", "22-3/8", "18 mm", "2 in", "1000 m", "0.01", "99999", "yes", "no", "over", "under", "between", "groove", "behind",
        "within-sides", "left", "right", "front", "back", "top", "bottom", "pair", "inside", "outside", "[]", "{}", "[1, 2]", "[1, 2, 3]", "{left: 5, top: 5}", "~", "“”", "main",
        "cup-35", "side-400", "swivel-50", "wood-5x60", "left-side", "shelf-1", "\"", "'", "[", "}", ":", "- ", "#", "\t", "é", "\ud83d\ude00",
    ];

    private static readonly Gen<string> Token = Gen.Int[0, Tokens.Length - 1].Select(i => Tokens[i]);

    // A text with some values, lines and pieces of text changed.
    private static Gen<string> Mutated(string[] texts) =>
        from index in Gen.Int[0, texts.Length - 1]
        from edits in Gen.Select(Gen.Int[0, 4], Gen.Double[0, 1], Gen.Double[0, 1], Token).Array[1, 4]
        select edits.Aggregate(texts[index], Edit);

    [Fact]
    public void Mutated_fixture_never_throws() => Mutated(Fixtures).Sample(text => Run(text, Catalogue), iter: Fuzz.Iterations(100));

    [Fact]
    public void Mutated_catalogue_never_throws() => Mutated([Catalogue]).Sample(text => Run(Named, text), iter: Fuzz.Iterations(100));

    [Fact]
    public void Any_text_never_throws() =>
        Gen.OneOf(Gen.String[Gen.Char[" -:[]{}#\"'\n\t&*!|>%@`,?abcxyz019/."], 0, 200], Gen.String[0, 60]).Sample(text => Run(text, text), iter: Fuzz.Iterations(1000));

    private static void Run(string text, string catalogue)
    {
        var loaded = Shop.Load(text, "fuzz.yaml", new Sources(name => name.Contains("parts", StringComparison.Ordinal) ? SourceFile.Of(Encoding.UTF8.GetBytes(catalogue)) : SourceFile.Missing("there is none")));
        Assert.True(loaded.Value is null != loaded.Diagnostics.IsEmpty);
        if (loaded.Value is not { } project) return;
        var resolved = Shop.Resolve(project);
        Assert.True(resolved.Value is null != resolved.Diagnostics.IsEmpty);
        if (resolved.Value is not { } design) return;
        var job = Shop.Draw(design, Shop.Check(design));
        foreach (var output in Shop.Export(job, ExporterSet.Standard)) output.Write(Stream.Null);
    }

    private static string Edit(string text, (int Kind, double Where, double Length, string Token) edit)
    {
        var lines = text.Split('\n').ToList();
        var line = (int)(edit.Where * (lines.Count - 1));
        switch (edit.Kind)
        {
            case 0:
                lines.RemoveAt(line);
                break;
            case 1:
                lines.Insert(line, lines[(int)(edit.Length * (lines.Count - 1))]);
                break;
            case 2:
                // Another value behind a colon of the line.
                var colons = lines[line].Select((c, i) => (c, i)).Where(c => c.c == ':').Select(c => c.i).ToList();
                if (colons.Count == 0) break;
                var colon = colons[(int)(edit.Length * (colons.Count - 1))];
                var end = lines[line].IndexOfAny([',', '}', '#'], colon);
                lines[line] = lines[line][..(colon + 1)] + " " + edit.Token + (end < 0 ? "" : lines[line][end..]);
                break;
            case 3:
                var at = (int)(edit.Length * lines[line].Length);
                lines[line] = lines[line][..at] + edit.Token + lines[line][at..];
                break;
            default:
                var cut = (int)(edit.Where * text.Length);
                return text[..cut] + text[Math.Min(text.Length, cut + 1 + (int)(edit.Length * 8))..];
        }

        return string.Join('\n', lines);
    }
}
