namespace ShopDrawings.Kernel;

/// <summary>A number as a user wrote it, read but not yet given a place in the model.</summary>
/// <param name="Text">The text that was read.</param>
internal abstract record Expression(string Text)
{
    /// <summary>The value with the history that leads to it.</summary>
    /// <param name="rule">What the number is, as a rule id: <c>outside-width</c>.</param>
    /// <param name="source">Where it was written.</param>
    public abstract Size Evaluate(string rule, SourceSpan source);
}

/// <summary>A number written out, in the unit its measure uses inside.</summary>
internal sealed record Literal(string Text, double Value) : Expression(Text)
{
    /// <inheritdoc/>
    public override Size Evaluate(string rule, SourceSpan source) => Size.Given(Value, rule, source);
}
