using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A bought part by its dimensions: the block it fills and the holes it needs, as seen by someone who looks at the face it is fixed to.
/// Origin in the middle of its foot, x to the right, y up; lengths in mm.
/// </summary>
/// <param name="Name">What lists call it.</param>
/// <param name="Length">Of the block along x.</param>
/// <param name="Width">Of the block along y.</param>
/// <param name="Height">How far it stands off the face.</param>
/// <param name="Bores">The holes it needs.</param>
public sealed record HardwarePattern(string Name, Size Length, Size Width, Size Height, ImmutableArray<PatternBore> Bores);

/// <summary>A hole a bought part needs. Lengths in mm.</summary>
/// <param name="At">Centre, from the middle of the part.</param>
/// <param name="Diameter">Diameter.</param>
/// <param name="Depth">Depth below the face, or nothing for a hole through the panel.</param>
public sealed record PatternBore(Position At, Size Diameter, Size? Depth);
