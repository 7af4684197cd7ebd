using System.Globalization;

namespace ShopDrawings.Tests.Lengths;

/// <summary>Reads stacked fractions by the numeric values that Unicode gives its digits.</summary>
internal static class StackedDigits
{
    /// <summary>22 ⁷⁄₁₆ as 22 7/16.</summary>
    public static string Flat(string text) => string.Concat(text.Select(c => c switch
    {
        '⁄' => "/",
        > '\u007f' when CharUnicodeInfo.GetDigitValue(c) is >= 0 and var digit => digit.ToString(CultureInfo.InvariantCulture),
        _ => c.ToString(),
    }));
}
