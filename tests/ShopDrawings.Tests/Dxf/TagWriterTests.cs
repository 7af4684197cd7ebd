using System.Text;
using CsCheck;
using ShopDrawings.Dxf;
using Xunit;

namespace ShopDrawings.Tests.Dxf;

public class TagWriterTests
{
    private static string Written(Action<TagWriter> write)
    {
        using var stream = new MemoryStream();
        var tags = new TagWriter(stream);
        write(tags);
        tags.Flush();
        return Encoding.UTF8.GetString(stream.ToArray());
    }

    [Fact]
    public void Tags_of_every_kind_take_two_lines_each() =>
        Assert.Equal("  0\nLINE\n  5\n1AF\n 62\n-7\n 10\n-0.5\n330\n0\n  1\n\n100\n⌀ 5\n", Written(tags =>
        {
            tags.Text(0, "LINE");
            tags.Handle(5, 0x1AF);
            tags.Integer(62, -7);
            tags.Real(10, -0.5);
            tags.Handle(330, 0);
            tags.Text(1, "");
            tags.Text(100, "⌀ 5");
        }));

    [Theory]
    [InlineData("a\nb")]
    [InlineData("a\rb")]
    [InlineData("\0")]
    [InlineData("\t")]
    public void Text_with_a_control_character_is_refused(string text) =>
        Assert.Throws<ArgumentException>(() => Written(tags => tags.Text(1, text)));

    [Fact]
    public void Tags_beyond_the_buffer_arrive_whole_and_in_order() =>
        Gen.String[Gen.Char['!', '\u20ff'], 0, 255].Array[300, 600].Sample(texts =>
        {
            var expected = string.Concat(texts.Select(t => $"  1\n{t}\n"));

            var written = Written(tags => Array.ForEach(texts, t => tags.Text(1, t)));

            return written == expected;
        }, iter: 30);
}
