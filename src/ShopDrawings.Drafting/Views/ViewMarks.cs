using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>The plane of a section where it is seen as a line, marked at both ends (ISO 128-3, from memory): a wide stroke, an arrow in the direction of sight, a letter.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="IsUpright">Whether the line stands upright, else it lies level.</param>
/// <param name="At">Where it lies across its direction, in the view before the scale.</param>
/// <param name="Looks">Where the section is looked at from it: 1 to the right or upwards, −1 to the left or downwards.</param>
internal sealed record SectionMark(string Letter, bool IsUpright, double At, int Looks);

/// <summary>A part of a view that is shown at a larger scale elsewhere.</summary>
/// <param name="Letter">Its letter.</param>
/// <param name="Window">What of the view it shows, before the scale.</param>
internal sealed record DetailMark(string Letter, Box2 Window);
