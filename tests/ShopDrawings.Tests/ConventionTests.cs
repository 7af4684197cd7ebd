using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests;

/// <summary>Rules of the code base that nobody has to remember.</summary>
public partial class ConventionTests
{
    private static readonly string Source = Path.Combine(OutsideProgram.RepositoryRoot, "src");

    // Which project knows which: the architecture.
    private static readonly Dictionary<string, string[]> Knows = new()
    {
        ["ShopDrawings.Kernel"] = [],
        ["ShopDrawings.Cutting"] = [],
        ["ShopDrawings.Drafting"] = ["ShopDrawings.Cutting", "ShopDrawings.Kernel"],
        ["ShopDrawings.Dxf"] = ["ShopDrawings.Drafting"],
        ["ShopDrawings.Svg"] = ["ShopDrawings.Drafting"],
        ["ShopDrawings.Print"] = ["ShopDrawings.Drafting"],
        ["ShopDrawings"] = ["ShopDrawings.Dxf", "ShopDrawings.Print", "ShopDrawings.Svg"],
        ["ShopDrawings.Cli"] = ["ShopDrawings"],
    };

    // One file each that may know a package whose types must not spread.
    private static readonly (string Package, string Namespace, string[] Files)[] Confined =
    [
        ("polygon library", "NetTopologySuite", ["PolygonOperations.cs"]),
        ("YAML library", "YamlDotNet", ["YamlReader.cs"]),
        ("PDF library", "PdfSharp", ["PdfExporter.cs", "PdfFont.cs"]),
        ("drawing library", "SkiaSharp", ["PngExporter.cs", "SkiaPlotter.cs"]),
        ("picture library", "SixLabors", ["PngExporter.cs"]),
    ];

    [Fact]
    public void Projects_know_only_what_they_may()
    {
        var actual = Directory.GetFiles(Source, "*.csproj", SearchOption.AllDirectories).ToDictionary(
            p => Path.GetFileNameWithoutExtension(p)!,
            p => XDocument.Load(p).Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension((string)r.Attribute("Include")!)!).Order(StringComparer.Ordinal).ToArray());

        Assert.Equal(Knows.OrderBy(k => k.Key, StringComparer.Ordinal), actual.OrderBy(k => k.Key, StringComparer.Ordinal));
    }

    [Fact]
    public void Library_is_pure()
    {
        foreach (var (path, text) in Sources().Where(s => !s.Path.Contains("ShopDrawings.Cli", StringComparison.Ordinal)))
            Assert.False(Impure().IsMatch(text), $"{path} uses {Impure().Match(text).Value}");
    }

    [Fact]
    public void Libraries_stay_in_their_files()
    {
        foreach (var (package, name, files) in Confined)
            foreach (var (path, text) in Sources())
                Assert.True(!text.Contains($"using {name}", StringComparison.Ordinal) || files.Contains(Path.GetFileName(path)), $"{path} uses the {package}");
    }

    [Fact]
    public void Types_that_look_immutable_are() => Assert.All(
        Assemblies().SelectMany(a => a.GetExportedTypes()).Where(t => !t.IsEnum && !t.IsInterface),
        t => Assert.DoesNotContain(t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static), p => p.SetMethod is { IsPublic: true } set && !IsInit(set) && p.DeclaringType != typeof(Exception)));

    [Fact]
    public void Public_surface_is_as_recorded()
    {
        var recorded = Path.Combine(OutsideProgram.RepositoryRoot, "tests", "ShopDrawings.Tests", "Data", "public-surface.txt");
        var actual = string.Concat(Assemblies().SelectMany(PublicMembers).Order(StringComparer.Ordinal).Select(m => m + "\n"));

        if (Environment.GetEnvironmentVariable("RECORD_PUBLIC_SURFACE") is { Length: > 0 }) File.WriteAllText(recorded, actual);
        Assert.Equal(File.ReadAllText(recorded), actual);
    }

    [Fact]
    public void Numbers_that_leave_the_program_carry_their_unit()
    {
        var heading = Regex.Match(File.ReadAllText(Path.Combine(Source, "ShopDrawings", "Export", "CsvExporter.cs")), "\"panel\", \"board\".*").Value;

        Assert.All(Regex.Matches(heading, "\"([a-z_]+)\"").Select(m => m.Groups[1].Value).Where(h => h is not ("panel" or "board" or "label" or "repeats" or "machine_file")),
            h => Assert.Matches("_(mm|in|kg)$", h));
    }

    private static IEnumerable<(string Path, string Text)> Sources() => Directory.GetFiles(Source, "*.cs", SearchOption.AllDirectories)
        .Where(p => !p.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
        .Select(p => (p, File.ReadAllText(p)));

    private static IEnumerable<System.Reflection.Assembly> Assemblies() =>
        [typeof(Tape).Assembly, typeof(ShopDrawings.Cutting.Cutter).Assembly, typeof(ShopDrawings.Drafting.Drawing).Assembly, typeof(ShopDrawings.Dxf.DxfExporter).Assembly, typeof(ShopDrawings.Svg.SvgExporter).Assembly, typeof(ShopDrawings.Print.PdfExporter).Assembly, typeof(Shop).Assembly];

    // Type and member with parameter types; what records generate is left out.
    private static IEnumerable<string> PublicMembers(System.Reflection.Assembly assembly)
    {
        foreach (var type in assembly.GetExportedTypes())
        {
            yield return type.FullName!;
            foreach (var member in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            {
                if (member.GetCustomAttribute<System.Runtime.CompilerServices.CompilerGeneratedAttribute>() is not null && member is not ConstructorInfo) continue;
                if (member is MethodInfo { IsSpecialName: true } accessor && !accessor.Name.StartsWith("op_", StringComparison.Ordinal)) continue;
                if (member is MethodInfo or ConstructorInfo)
                    yield return $"{type.FullName}.{member.Name}({string.Join(", ", ((MethodBase)member).GetParameters().Select(p => p.ParameterType.ToString()))})";
                else
                    yield return $"{type.FullName}.{member.Name}";
            }
        }
    }

    private static bool IsInit(MethodInfo set) => set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(System.Runtime.CompilerServices.IsExternalInit));

    [GeneratedRegex(@"\b(DateTime(Offset)?\.(Utc)?Now|Guid\.New|File\.|Directory\.|Console\.|Environment\.Get|Random\b|Stopwatch|Thread\.Sleep|CultureInfo\.Current)")]
    private static partial Regex Impure();
}
