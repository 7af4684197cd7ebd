using ShopDrawings.Kernel;
using UnitsNet.Units;

namespace ShopDrawings.Tests.Lengths;

public class TapeRefusalTests
{
    private const LengthUnit Mm = LengthUnit.Millimeter, Cm = LengthUnit.Centimeter, M = LengthUnit.Meter, In = LengthUnit.Inch, Ft = LengthUnit.Foot;
    private const string Like = "568.3 mm, 56.83 cm, 22-3/8 in or 1' 10-3/8\"";

    [Theory]
    // Nothing, or too much.
    [InlineData("", Mm, $"an empty text is not a length; write it like {Like}")]
    [InlineData(" \t\u00a0 ", Mm, $"an empty text is not a length; write it like {Like}")]
    [InlineData("1234567890123456789012345678901234567890123456789012345678901", Mm, $"“12345678901234567890…” is too long for a length; write it like {Like}")]
    [InlineData("123456789012345678901", Mm, $"“123456789012345678901” has more digits than a length can need; write it like {Like}")]
    // Commas.
    [InlineData("568,3 mm", Mm, "“568,3 mm” has a decimal comma; write 568.3 mm")]
    [InlineData("0,25", In, "“0,25” has a decimal comma; write 0.25")]
    [InlineData("1,2345", Mm, "“1,2345” has a decimal comma; write 1.2345")]
    [InlineData("1,000 mm", Mm, "“1,000 mm” has a comma, which may mean thousands or a decimal; write 1000 mm or 1.000 mm")]
    [InlineData("1,000.5 mm", Mm, "“1,000.5 mm” has a comma where none belongs; write 1000.5 mm")]
    [InlineData("1,000,000", Mm, $"“1,000,000” has a comma where none belongs; write it like {Like}")]
    [InlineData("1.000,5 mm", Mm, "“1.000,5 mm” has a decimal comma; write 1000.5 mm")]
    [InlineData(",", Mm, $"“,” has a comma where none belongs; write it like {Like}")]
    // Fractions where they cannot be meant.
    [InlineData("22 3/8", Mm, "“22 3/8” is a fraction without a unit in a file that counts in mm; write 22 3/8 in")]
    [InlineData("3/8", Cm, "“3/8” is a fraction without a unit in a file that counts in cm; write 3/8 in")]
    [InlineData("½", M, "“½” is a fraction without a unit in a file that counts in m; write ½ in")]
    [InlineData("22 3/8 mm", In, $"“22 3/8 mm” has a fraction, and a length in mm is counted in decimals; write it like {Like}")]
    [InlineData("½ cm", In, $"“½ cm” has a fraction, and a length in cm is counted in decimals; write it like {Like}")]
    [InlineData("1/2 m", In, $"“1/2 m” has a fraction, and a length in m is counted in decimals; write it like {Like}")]
    [InlineData("22 9/8", In, $"“22 9/8” has a fraction of one or more behind a whole number; write it like {Like}")]
    [InlineData("22-8/8 in", Mm, $"“22-8/8 in” has a fraction of one or more behind a whole number; write it like {Like}")]
    [InlineData("3/0", In, $"“3/0” divides by zero; write it like {Like}")]
    [InlineData("0/0", In, $"“0/0” divides by zero; write it like {Like}")]
    [InlineData("22 3/0", In, $"“22 3/0” divides by zero; write it like {Like}")]
    [InlineData("3/8.5", In, $"“3/8.5” is not a length; write it like {Like}")]
    [InlineData("3/", In, $"“3/” is not a length; write it like {Like}")]
    [InlineData("/8", In, $"“/8” is not a length; write it like {Like}")]
    [InlineData("1/2/3", In, $"“1/2/3” is not a length; write it like {Like}")]
    [InlineData("22.5 3/8", In, $"“22.5 3/8” is not a length; write it like {Like}")]
    [InlineData("½½", In, $"“½½” is not a length; write it like {Like}")]
    [InlineData("3½/8", In, $"“3½/8” is not a length; write it like {Like}")]
    // Units.
    [InlineData("5 parsec", Mm, "“5 parsec” has the unit “parsec”, which is not one of mm, cm, m, in, ft")]
    [InlineData("5 mmm", Mm, "“5 mmm” has the unit “mmm”, which is not one of mm, cm, m, in, ft")]
    [InlineData("5 in2", Mm, "“5 in2” has the unit “in2”, which is not one of mm, cm, m, in, ft")]
    [InlineData("5 yd", Mm, "“5 yd” has the unit “yd”, which is not one of mm, cm, m, in, ft")]
    [InlineData("1e3", Mm, "“1e3” is not a plain number; write 1000")]
    [InlineData("1e3 mm", Mm, "“1e3 mm” has the unit “e3”, which is not one of mm, cm, m, in, ft")]
    [InlineData("1.5E-3", Mm, "“1.5E-3” is not a plain number; write 0.0015")]
    [InlineData("mm", Mm, $"“mm” is not a length; write it like {Like}")]
    [InlineData("five", Mm, $"“five” is not a length; write it like {Like}")]
    [InlineData("5 mm mm", Mm, $"“5 mm mm” is not a length; write it like {Like}")]
    [InlineData("5 mm²", Mm, $"“5 mm²” is not a length; write it like {Like}")]
    [InlineData("22 3", In, $"“22 3” is not a length; write it like {Like}")]
    [InlineData("~22 3/8\"", In, $"“~22 3/8\"” is not a length; write it like {Like}")]
    [InlineData("5\n6", Mm, $"“5\n6” is not a length; write it like {Like}")]
    [InlineData(".", Mm, $"“.” is not a length; write it like {Like}")]
    [InlineData("1.2.3", Mm, $"“1.2.3” is not a length; write it like {Like}")]
    [InlineData("NaN", Mm, $"“NaN” is not a length; write it like {Like}")]
    [InlineData("٣ mm", Mm, $"“٣ mm” is not a length; write it like {Like}")]
    // Feet and inches.
    [InlineData("1' 12\"", Mm, "“1' 12\"” has 12 or more inches behind its feet; write feet and inches below 12, or inches alone")]
    [InlineData("5 ft 27/2 in", Mm, "“5 ft 27/2 in” has 12 or more inches behind its feet; write feet and inches below 12, or inches alone")]
    [InlineData("1' 10 mm", Mm, $"“1' 10 mm” is not a length; write it like {Like}")]
    [InlineData("1' 2'", Mm, $"“1' 2'” is not a length; write it like {Like}")]
    [InlineData("1' x", Mm, $"“1' x” is not a length; write it like {Like}")]
    // Arithmetic.
    [InlineData("2+3", Mm, $"“2+3” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("2 * 3 mm", Mm, $"“2 * 3 mm” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("2×3", Mm, $"“2×3” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("600 mm - 2 mm", Mm, $"“600 mm - 2 mm” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("22-3", In, $"“22-3” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("22 -3/8", In, $"“22 -3/8” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("(2)", Mm, $"“(2)” looks like a calculation, which is not understood here; write the result, like {Like}")]
    [InlineData("--5", Mm, $"“--5” looks like a calculation, which is not understood here; write the result, like {Like}")]
    // Beyond 100 m.
    [InlineData("100000.0001", Mm, "“100000.0001” is beyond 100000 mm; is the unit right?")]
    [InlineData("-101 m", Mm, "“-101 m” is beyond 100000 mm; is the unit right?")]
    [InlineData("568.3", M, "“568.3” is beyond 100000 mm; is the unit right?")]
    [InlineData("329'", Ft, "“329'” is beyond 100000 mm; is the unit right?")]
    [InlineData("99999999999999999999'", Ft, "“99999999999999999999'” is beyond 100000 mm; is the unit right?")]
    [InlineData("99999999999999999999 1/99999999999999999999", In, "“99999999999999999999 1/99999999999999999999” is beyond 100000 mm; is the unit right?")]
    [InlineData("99999999999999999999' 1 1/99999999999999999999", In, "“99999999999999999999' 1 1/99999999999999999999” is beyond 100000 mm; is the unit right?")]
    public void Text_that_is_no_length_is_refused_with_what_was_read(string text, LengthUnit bare, string message)
    {
        var read = Tape.TryParse(text, bare, out var length, out var error);

        Assert.Equal(message, error);
        Assert.False(read);
        Assert.Equal(0, length.Millimeters);
        Assert.Equal(message, Assert.Throws<FormatException>(() => Tape.Parse(text, bare)).Message);
    }

    [Fact]
    public void Long_text_is_not_cut_inside_a_character()
    {
        var text = new string('x', 19) + "\U0001D538" + new string('x', 60);

        Tape.TryParse(text, Mm, out _, out var error);

        Assert.DoesNotContain(error!, char.IsSurrogate);
        Assert.StartsWith("“xxxxxxxxxxxxxxxxxxx…” is too long", error, StringComparison.Ordinal);
    }
}
