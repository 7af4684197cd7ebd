using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// A bought part by its dimensions: the block it fills and what is drilled, cut and marked for it, as seen by someone who looks at the face
/// it is fixed to. Origin in the middle of its foot, x to the right, y up; lengths in mm.
/// </summary>
/// <param name="Name">What lists call it.</param>
/// <param name="Length">Of the block along x.</param>
/// <param name="Width">Of the block along y.</param>
/// <param name="Height">How far it stands off the face; 0 for what is only cut or marked.</param>
/// <param name="Features">Bores, openings and marks it needs, in its own frame, as if the face were an inside one.</param>
public sealed record HardwarePattern(string Name, Size Length, Size Width, Size Height, ImmutableArray<Feature> Features);
