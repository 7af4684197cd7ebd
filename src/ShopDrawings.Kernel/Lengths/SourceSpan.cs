namespace ShopDrawings.Kernel;

/// <summary>Where in a user's file something stands. Line and column count from 1; <c>default</c> is nowhere.</summary>
public readonly record struct SourceSpan(string File, int Line, int Column)
{
    /// <summary>As <c>file(line,column)</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{File}({Line},{Column})");
}
