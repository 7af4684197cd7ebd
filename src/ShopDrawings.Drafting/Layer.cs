namespace ShopDrawings.Drafting;

/// <summary>A named group of entities of one role.</summary>
public sealed record Layer
{
    /// <summary>A layer.</summary>
    /// <param name="name">Letters A–Z, digits and underscores, a letter first, at most 31 characters: safe in every DXF release.</param>
    /// <param name="role">What its entities mean.</param>
    /// <param name="title">What the layer holds, in words for a reader.</param>
    /// <exception cref="ArgumentException">The name is not of that form.</exception>
    public Layer(string name, Role role, string title)
    {
        if (name.Length is 0 or > 31 || !char.IsAsciiLetterUpper(name[0]) || !name.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '_'))
            throw new ArgumentException($"“{name}” is no layer name.", nameof(name));
        (Name, Role, Title) = (name, role, title);
    }

    /// <summary>Letters A–Z, digits and underscores, a letter first, at most 31 characters.</summary>
    public string Name { get; }

    /// <summary>What its entities mean.</summary>
    public Role Role { get; }

    /// <summary>What the layer holds, in words for a reader.</summary>
    public string Title { get; }
}
