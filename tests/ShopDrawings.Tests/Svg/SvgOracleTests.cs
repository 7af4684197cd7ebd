using Xunit;

namespace ShopDrawings.Tests.Svg;

public class SvgOracleTests
{
    [Fact]
    public void Sheet_passes_the_outside_check_of_sizes_texts_and_lines()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var file = Path.Combine(folder.FullName, "sheet.svg");
            File.WriteAllBytes(file, SvgSample.Bytes(SvgSample.Sheet()));

            var (exitCode, output, error) = OutsideProgram.Run("/usr/bin/python3", Path.Combine(Root(), "tests/oracles/svg_check.py"), file, "--gap", "0.3", "--margin", "5");

            // It ends with 2 where the drawing programs it needs are missing.
            Assert.SkipWhen(exitCode == 2 && Environment.GetEnvironmentVariable("CI") is null, error);
            Assert.True(exitCode == 0, output + error);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "ShopDrawings.sln")))
            folder = folder.Parent ?? throw new DirectoryNotFoundException("The tests run outside the repository.");
        return folder.FullName;
    }
}
