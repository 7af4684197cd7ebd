using System.Text;

namespace ShopDrawings.Tests;

/// <summary>Every fixture through the whole tool, compared byte for byte with output-samples/ (renewed by tests/regenerate-samples).</summary>
public class SamplesTests
{
    private static readonly string Samples = Path.Combine(OutsideProgram.RepositoryRoot, "output-samples");

    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Fixture_made_again_equals_its_sample(string name)
    {
        using var folder = new TemporaryFolder();

        var call = Call.Of("make", Path.Combine(Fixtures.Folder, name + ".yaml"), "--out", folder["out"]);

        Assert.Equal((0, ""), (call.ExitCode, call.Errors));
        var (made, sample) = (TemporaryFolder.Contents(folder["out"]), TemporaryFolder.Contents(Path.Combine(Samples, name)));
        Assert.Equal(sample.Keys, made.Keys);
        foreach (var (path, bytes) in made)
            Assert.True(bytes.AsSpan().SequenceEqual(sample[path]), $"{name}/{path} differs from its sample:\n{FirstDifference(sample[path], bytes)}");
    }

    [Fact]
    public void Tables_cut_again_equal_their_sample()
    {
        using var folder = new TemporaryFolder();
        var tables = Path.Combine(Fixtures.Folder, "cutting");

        var call = Call.Of("cut", Path.Combine(tables, "panels.csv"), "--stock", Path.Combine(tables, "stock.csv"), "--currency", "crowns", "--first-cut", "along", "--least-strip", "60", "--title", "Wardrobe", "--out", folder["out"]);

        Assert.Equal((0, ""), (call.ExitCode, call.Errors));
        var (made, sample) = (TemporaryFolder.Contents(folder["out"]), TemporaryFolder.Contents(Path.Combine(Samples, "cutting")));
        Assert.Equal(sample.Keys, made.Keys);
        Assert.All(made, file => Assert.True(file.Value.AsSpan().SequenceEqual(sample[file.Key]), file.Key));
    }

    [Theory]
    [InlineData("project")]
    [InlineData("catalogue")]
    [InlineData("assembly")]
    [InlineData("findings")]
    public void Schema_printed_equals_its_sample(string which) =>
        Assert.Equal(File.ReadAllText(Path.Combine(Samples, "schemas", which + ".schema.json")), Call.Of("schema", which).Output);

    [Fact]
    public void Samples_hold_nothing_but_fixtures_tables_and_schemas() =>
        Assert.Equal(
            Names.Select(n => n.Data).Append("cutting").Append("schemas").Order(StringComparer.Ordinal),
            Directory.GetFileSystemEntries(Samples).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal));

    private static string FirstDifference(byte[] expected, byte[] actual)
    {
        var (a, b) = (Encoding.UTF8.GetString(expected).Split('\n'), Encoding.UTF8.GetString(actual).Split('\n'));
        var line = Enumerable.Range(0, Math.Min(a.Length, b.Length)).FirstOrDefault(i => a[i] != b[i], Math.Min(a.Length, b.Length));
        return $"line {line + 1}: sample “{a.ElementAtOrDefault(line)}”, made “{b.ElementAtOrDefault(line)}”";
    }
}
