namespace ShopDrawings.Kernel;

/// <summary>A number a check compares with; users may change it.</summary>
/// <param name="Rule">The rule it belongs to.</param>
/// <param name="Name">Its key in the project file.</param>
/// <param name="Default">Its value where nobody changes it, in mm.</param>
/// <param name="Help">What it means, with its source.</param>
public sealed record CheckLimit(string Rule, string Name, double Default, string Help);
