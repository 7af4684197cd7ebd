namespace ShopDrawings.Tests;

/// <summary>What drawing programs that are not ours say of SVG drawings.</summary>
internal static class SvgOracle
{
    /// <summary>
    /// Physical sizes, nothing active, texts inside the page and clear of each other and of lines. All files go to the programs together, which takes a
    /// third of what it takes one by one. Skips the test where a program is missing.
    /// </summary>
    /// <param name="files">The files, at least one.</param>
    /// <param name="leastText">Least height of capitals in mm.</param>
    public static void AssertSound(IReadOnlyCollection<string> files, string leastText = "2.4")
    {
        OutsideProgram.DemandPrograms("inkscape", "rsvg-convert", "pdftoppm");
        Assert.NotEmpty(files);
        var result = OutsideProgram.RunOracle("svg_check.py", "json", [.. files, "--failures", "--min-text", leastText, "--gap", "0.3", "--margin", "5"]);
        Assert.True(result.ExitCode == 0, result.Output + result.Errors);
    }
}
