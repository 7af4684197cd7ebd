using System.Collections.Immutable;
using System.Globalization;

namespace ShopDrawings.Kernel;

/// <summary>
/// A resolved number with the history that leads to it: a tree of operations down to what a user wrote, what common practice gives,
/// and plain numbers. Lengths in mm. Immutable; made by ordinary arithmetic.
/// </summary>
public sealed class Size
{
    private Size(double value, Operation operation, ImmutableArray<Size> operands, string rule = "", SourceSpan source = default)
    {
        Value = value;
        Operation = operation;
        Operands = operands;
        Rule = rule;
        Source = source;
    }

    /// <summary>The number; lengths in mm.</summary>
    public double Value { get; }

    /// <summary>How it came about.</summary>
    public Operation Operation { get; }

    /// <summary>What it was made from; empty for leaves.</summary>
    public ImmutableArray<Size> Operands { get; }

    /// <summary>What the number is, as a stable id in words (<c>inner-width</c>); empty for a step inside a formula.</summary>
    public string Rule { get; }

    /// <summary>Where a user wrote it; nowhere for the rest.</summary>
    public SourceSpan Source { get; }

    /// <summary>Nothing at all: the origin.</summary>
    public static Size Zero { get; } = Constant(0);

    /// <summary>A number a user wrote.</summary>
    public static Size Given(double value, string rule, SourceSpan source) => new(value, Operation.Given, [], rule, source);

    /// <summary>A number nobody wrote: common practice, or the dimension of a bought part.</summary>
    public static Size Default(double value, string rule) => new(value, Operation.Default, [], rule);

    /// <summary>A plain number of a formula.</summary>
    public static Size Constant(double value) => new(value, Operation.Constant, []);

    /// <summary>The sum.</summary>
    public static Size operator +(Size a, Size b) => a == Zero ? b : b == Zero ? a : Of(Operation.Sum, a, b);

    /// <summary>The difference.</summary>
    public static Size operator -(Size a, Size b) => b == Zero ? a : Of(Operation.Difference, a, b);

    /// <summary>A multiple.</summary>
    public static Size operator *(double factor, Size a) => Of(Operation.Product, Constant(factor), a);

    /// <summary>The product.</summary>
    public static Size operator *(Size a, Size b) => Of(Operation.Product, a, b);

    /// <summary>The quotient by a plain number.</summary>
    public static Size operator /(Size a, double divisor) => Of(Operation.Quotient, a, Constant(divisor));

    /// <summary>The quotient.</summary>
    public static Size operator /(Size a, Size b) => Of(Operation.Quotient, a, b);

    /// <summary>The smaller of two.</summary>
    public static Size Smallest(Size a, Size b) => Of(Operation.Smallest, a, b);

    /// <summary>The larger of two.</summary>
    public static Size Largest(Size a, Size b) => Of(Operation.Largest, a, b);

    /// <summary>The next whole number.</summary>
    public Size RoundedUp() => Of(Operation.RoundedUp, this);

    /// <summary>The square root.</summary>
    public Size SquareRoot() => Of(Operation.SquareRoot, this);

    /// <summary>The nearest whole multiple of a step; the number itself without a step.</summary>
    public Size Snapped(Size? step) => step is null ? this : Of(Operation.Snapped, this, step);

    /// <summary>The next lower whole multiple of a step; the number itself without a step.</summary>
    public Size SnappedDown(Size? step) => step is null ? this : Of(Operation.SnappedDown, this, step);

    /// <summary>The same number with a name; a named number keeps its own name below the new one.</summary>
    public Size As(string rule) => Rule.Length == 0
        ? new Size(Value, Operation, Operands, rule, Source)
        : Rule == rule ? this : new Size(Value, Operation.Same, [this], rule);

    /// <summary>The value worked out again from the leaves alone.</summary>
    public double Recomputed() => Recomputed(new Dictionary<Size, double>(ReferenceEqualityComparer.Instance));

    /// <summary>
    /// One line: the number, and the named numbers it was made from, such as
    /// <c>inner width 564 = outside width 600 − 2 × side thickness 18</c>.
    /// </summary>
    public override string ToString() =>
        Operands.IsEmpty ? Named : Rule.Length == 0 ? $"{Number(Value)} = {Formula(0)}" : $"{Named} = {Formula(0)}";

    // A size that many formulas use is worked out once.
    private double Recomputed(Dictionary<Size, double> known)
    {
        if (Operands.IsEmpty) return Value;
        if (!known.TryGetValue(this, out var value)) known[this] = value = Apply(Operation, [.. Operands.Select(o => o.Recomputed(known))]);
        return value;
    }

    private string Named => Rule.Length == 0 ? Number(Value) : $"{Rule.Replace('-', ' ')} {Number(Value)}";

    private string Formula(int outerRank)
    {
        var (rank, sign) = Operation switch
        {
            Operation.Sum => (1, " + "),
            Operation.Difference => (1, " − "),
            Operation.Product => (2, " × "),
            Operation.Quotient => (2, " ÷ "),
            _ => (3, ", "),
        };
        var terms = Operands.Select((o, i) => o.Operands.IsEmpty || o.Rule.Length > 0 ? o.Named : o.Formula(sign == ", " ? 0 : rank + (i > 0 && sign is " − " or " ÷ " ? 1 : 0)));
        var text = string.Join(sign, terms);
        return Operation switch
        {
            Operation.Smallest => $"smallest of ({text})",
            Operation.Largest => $"largest of ({text})",
            Operation.RoundedUp => $"({text}) rounded up",
            Operation.SquareRoot => $"√({text})",
            Operation.Snapped => $"nearest multiple of ({text})",
            Operation.SnappedDown => $"next lower multiple of ({text})",
            _ => rank < outerRank ? $"({text})" : text,
        };
    }

    private static string Number(double value) => (Math.Round(value, 4) + 0.0).ToString("0.####", CultureInfo.InvariantCulture);

    private static Size Of(Operation operation, params ImmutableArray<Size> operands) =>
        new(Apply(operation, operands.Select(o => o.Value).ToArray()), operation, operands);

    private static double Apply(Operation operation, double[] v) => operation switch
    {
        Operation.Sum => v[0] + v[1],
        Operation.Difference => v[0] - v[1],
        Operation.Product => v[0] * v[1],
        Operation.Quotient => v[0] / v[1],
        Operation.Smallest => Math.Min(v[0], v[1]),
        Operation.Largest => Math.Max(v[0], v[1]),
        Operation.RoundedUp => Math.Ceiling(v[0] - 1e-9),
        Operation.SquareRoot => Math.Sqrt(v[0]),
        Operation.Snapped => Math.Floor(v[0] / v[1] + 0.5) * v[1],
        Operation.SnappedDown => Math.Floor(v[0] / v[1] + 1e-9) * v[1],
        Operation.Same => v[0],
        _ => throw new InvalidOperationException($"{operation} has no operands."),
    };
}
