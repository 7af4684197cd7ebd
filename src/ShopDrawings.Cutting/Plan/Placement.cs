namespace ShopDrawings.Cutting;

/// <summary>Where one part lies on its sheet. Lengths in nanometres, in the frame of the whole sheet with its trim: x along the length, y across.</summary>
/// <param name="Part">Which part.</param>
/// <param name="Copy">Which of the wanted number, from 1.</param>
/// <param name="X">Its nearest point along the sheet's length.</param>
/// <param name="Y">Its nearest point across.</param>
/// <param name="AlongX">How far it reaches along x, allowance included.</param>
/// <param name="AlongY">How far it reaches along y, allowance included.</param>
/// <param name="IsTurned">Whether its length lies across the sheet's.</param>
public sealed record Placement(Part Part, int Copy, long X, long Y, long AlongX, long AlongY, bool IsTurned)
{
    /// <summary>What is written on the piece: label, and its number where there are several.</summary>
    public string Label => (Part.Label ?? Part.Id) + (Part.Quantity > 1 ? $" #{Copy}" : "");
}
