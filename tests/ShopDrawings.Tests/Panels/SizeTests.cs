using CsCheck;
using ShopDrawings.Kernel;
using Size = ShopDrawings.Kernel.Size;

namespace ShopDrawings.Tests.Panels;

public class SizeTests
{
    private static readonly Size A = Size.Given(10, "outside-width", new SourceSpan("f.yaml", 3, 7));
    private static readonly Size B = Size.Default(4, "play");
    private static readonly Size C = Size.Constant(2);

    // A tree of operations and, beside it, what it comes to in plain numbers.
    private static readonly Gen<(Size Size, double Value)> Leaf = Gen.Select(Gen.Double[1, 100], Gen.Int[0, 2]).Select((v, kind) =>
        (kind switch { 0 => Size.Given(v, "given", default), 1 => Size.Default(v, "usual"), _ => Size.Constant(v) }, v));

    private static Gen<(Size Size, double Value)> Tree(int depth) => depth == 0
        ? Leaf
        : Gen.OneOf(Leaf, Gen.Select(Tree(depth - 1), Tree(depth - 1), Gen.Int[0, 9], Gen.Double[1, 9]).Select((a, b, operation, factor) => operation switch
        {
            0 => (a.Size + b.Size, a.Value + b.Value),
            1 => (a.Size - b.Size, a.Value - b.Value),
            2 => (a.Size * b.Size, a.Value * b.Value),
            3 => (factor * a.Size, factor * a.Value),
            4 => (a.Size / factor, a.Value / factor),
            5 => (a.Size / (b.Size + b.Size), a.Value / (b.Value + b.Value)),
            6 => (Size.Smallest(a.Size, b.Size), a.Value < b.Value ? a.Value : b.Value),
            7 => (Size.Largest(a.Size, b.Size), a.Value > b.Value ? a.Value : b.Value),
            8 => (a.Size.RoundedUp(), Math.Ceiling(a.Value - 1e-9)),
            _ => (a.Size.As("named"), a.Value),
        }));

    [Fact]
    public void Value_is_recomputed_from_the_leaves() =>
        Tree(5).Sample(t => t.Size.Value.Equals(t.Value) && t.Size.Recomputed().Equals(t.Value), iter: 5000);

    [Fact]
    public async Task Value_shared_by_many_formulas_is_recomputed_once()
    {
        var size = A;
        for (var i = 0; i < 200; i++) size = (size + size) / 2;

        // Worked out for each use, it would take longer than anyone lives.
        var recomputed = await Task.Run(size.Recomputed, TestContext.Current.CancellationToken).WaitAsync(TimeSpan.FromSeconds(10), TestContext.Current.CancellationToken);

        Assert.Equal(10, recomputed);
        Assert.Same(size.Operands[0].Operands[0], size.Operands[0].Operands[1]);
    }

    public static TheoryData<Size, string> Texts => new()
    {
        { A, "outside width 10" },
        { B, "play 4" },
        { C, "2" },
        { Size.Constant(568.3250001), "568.325" },
        { Size.Constant(-0.00001), "0" },
        { A + B, "14 = outside width 10 + play 4" },
        { A - B, "6 = outside width 10 − play 4" },
        { 2 * B, "8 = 2 × play 4" },
        { A / 4, "2.5 = outside width 10 ÷ 4" },
        { (A - 2 * B).As("inner-width"), "inner width 2 = outside width 10 − 2 × play 4" },
        { A - (B + C), "4 = outside width 10 − (play 4 + 2)" },
        { A - (B - C), "8 = outside width 10 − (play 4 − 2)" },
        { A - B - C, "4 = outside width 10 − play 4 − 2" },
        { A - B + C, "8 = outside width 10 − play 4 + 2" },
        { A + (B - C), "12 = outside width 10 + play 4 − 2" },
        { 2 * (A - B), "12 = 2 × (outside width 10 − play 4)" },
        { (A - B) * C, "12 = (outside width 10 − play 4) × 2" },
        { (A - B) / 2, "3 = (outside width 10 − play 4) ÷ 2" },
        { A / (B * C), "1.25 = outside width 10 ÷ (play 4 × 2)" },
        { A / (B / C), "5 = outside width 10 ÷ (play 4 ÷ 2)" },
        { A / B / C, "1.25 = outside width 10 ÷ play 4 ÷ 2" },
        { A / (B + C), "1.6667 = outside width 10 ÷ (play 4 + 2)" },
        { A - (B + C).As("both"), "4 = outside width 10 − both 6" },
        { Size.Smallest(A, B), "4 = smallest of (outside width 10, play 4)" },
        { Size.Largest(A, B).As("least"), "least 10 = largest of (outside width 10, play 4)" },
        { (A / B).RoundedUp(), "3 = (outside width 10 ÷ play 4) rounded up" },
        { A.As("cut-length"), "cut length 10 = outside width 10" },
    };

    [Theory]
    [MemberData(nameof(Texts))]
    public void Text_shows_the_formula(Size size, string expected) => Assert.Equal(expected, size.ToString());

    [Fact]
    public void Named_size_keeps_its_own_name_below_a_new_one()
    {
        var formula = A + B;
        var named = formula.As("sum");
        var renamed = named.As("other");

        Assert.Equal((Operation.Sum, "sum"), (named.Operation, named.Rule));
        Assert.Equal(formula.Operands, named.Operands);
        Assert.Equal((Operation.Same, "other"), (renamed.Operation, renamed.Rule));
        Assert.Same(named, renamed.Operands.Single());
        Assert.Same(renamed, renamed.As("other"));
        Assert.Equal(14, renamed.Recomputed());
    }

    [Fact]
    public void Leaf_remembers_where_it_was_written()
    {
        Assert.Equal("f.yaml(3,7)", A.Source.ToString());
        Assert.Equal((Operation.Given, Operation.Default, Operation.Constant), (A.Operation, B.Operation, C.Operation));
        Assert.Equal(new SourceSpan("f.yaml", 3, 7), A.As("inner").Operands.Single().Source);
    }

    [Fact]
    public void Nothing_added_or_taken_away_leaves_a_size_as_it_is()
    {
        Assert.Same(A, A + Size.Zero);
        Assert.Same(A, Size.Zero + A);
        Assert.Same(A, A - Size.Zero);
        Assert.Equal(-10, (Size.Zero - A).Value);
    }

    [Theory]
    [InlineData(3, 3)]
    [InlineData(3.0000000001, 3)]
    [InlineData(3.00001, 4)]
    [InlineData(2.9999999999, 3)]
    [InlineData(-1.5, -1)]
    [InlineData(0, 0)]
    public void Rounding_up_forgives_a_hair(double value, double expected) =>
        Assert.Equal(expected, Size.Constant(value).RoundedUp().Value);
}
