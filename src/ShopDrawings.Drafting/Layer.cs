namespace ShopDrawings.Drafting;

/// <summary>A named group of entities of one role.</summary>
/// <param name="Name">Letters A–Z, digits and underscores, a letter first, at most 31 characters: safe in every DXF release.</param>
/// <param name="Role">What its entities mean.</param>
/// <param name="Title">What the layer holds, in words for a reader.</param>
public sealed record Layer(string Name, Role Role, string Title);
