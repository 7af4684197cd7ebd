using System.Globalization;
using System.Text.RegularExpressions;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Cabinet;

/// <summary>The cabinets worked by hand in DEVELOPERS.md: every panel and every row, and no others.</summary>
public partial class WorkedByHandTests
{
    // Four decimals are printed there.
    private const double Printed = 0.5e-4;

    public static TheoryData<string> Letters => ["A", "B", "C"];

    [Theory]
    [MemberData(nameof(Letters))]
    public void Panels_are_those_worked_by_hand(string letter)
    {
        var (assembly, section) = Read(letter);
        var expected = Panel().Matches(section);

        Assert.Equal(expected.Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal), assembly.Panels.Select(p => p.Id).Order(StringComparer.Ordinal));
        foreach (Match row in expected)
        {
            var panel = assembly.Panel(row.Groups[1].Value);
            Assert.Equal(Number(row.Groups[2]), panel.Length.Value, Printed);
            Assert.Equal(Number(row.Groups[3]), panel.Width.Value, Printed);
        }
    }

    [Theory]
    [MemberData(nameof(Letters))]
    public void Rows_are_those_worked_by_hand(string letter)
    {
        var (assembly, section) = Read(letter);
        var expected = Row().Matches(section);

        Assert.Equal(expected.Select(m => m.Groups[1].Value).Order(StringComparer.Ordinal), assembly.Joints.Select(j => j.Id).Order(StringComparer.Ordinal));
        foreach (Match row in expected)
        {
            var heads = assembly.Joints.Single(j => j.Id == row.Groups[1].Value).Fasteners.Select(f => f.Head).ToList();
            Assert.All(heads, h => Assert.Equal(Number(row.Groups[3]), From(h, row.Groups[2].Value), Printed));
            var places = row.Groups[5].Value.Split(", ").Select(p => double.Parse(p, CultureInfo.InvariantCulture)).ToList();
            var actual = heads.Select(h => From(h, row.Groups[4].Value)).Order().ToList();
            Assert.Equal(places.Count, actual.Count);
            Assert.All(places.Zip(actual), p => Assert.Equal(p.First, p.Second, Printed));
        }
    }

    private static (Assembly Assembly, string Section) Read(string letter)
    {
        var text = File.ReadAllText(Path.Combine(OutsideProgram.RepositoryRoot, "DEVELOPERS.md"));
        var section = text[text.IndexOf($"**{letter}. ", StringComparison.Ordinal)..];
        var next = section.IndexOf("\n**", 5, StringComparison.Ordinal);
        var end = section.IndexOf("\n## ", StringComparison.Ordinal);
        section = section[..(next < 0 || next > end ? end : next)];
        return (Fixtures.DesignOf(Regex.Match(section, "```yaml\n(.*?)```", RegexOptions.Singleline).Groups[1].Value).Assembly, section);
    }

    private static double From(Point3 point, string edge) => edge switch { "left" => point.X, "front" => point.Y, _ => point.Z };

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^\| ([a-z0-9/-]+) \| ([\d.]+) \| ([\d.]+) \|$", RegexOptions.Multiline)]
    private static partial Regex Panel();

    [GeneratedRegex(@"^\| ([a-z0-9-]+/[a-z0-9/-]+) \| (left|front|bottom) ([\d.]+) \| (left|front|bottom) ([\d., ]+) \|$", RegexOptions.Multiline)]
    private static partial Regex Row();
}
