using ShopDrawings.Kernel;

namespace ShopDrawings;

/// <summary>A mistake in a user's text: where, what was expected, and the cure.</summary>
/// <param name="At">File, line and column.</param>
/// <param name="Message">What is wrong and how to write it.</param>
public sealed record Diagnostic(SourceSpan At, string Message)
{
    /// <summary>As <c>file(line,column): error: message</c>.</summary>
    public override string ToString() => $"{At}: error: {Message}";
}
