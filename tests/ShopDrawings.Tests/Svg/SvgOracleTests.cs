namespace ShopDrawings.Tests.Svg;

public class SvgOracleTests
{
    [Fact]
    public void Sheet_passes_the_outside_check_of_sizes_texts_and_lines()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["sheet.svg"], SvgSample.Bytes(SvgSample.Sheet()));

        SvgOracle.AssertSound([folder["sheet.svg"]], leastText: "1.8");
    }
}
