using System.Collections.Immutable;

namespace ShopDrawings.Dxf;

/// <summary>
/// A sheet of paper beside the model: a frame, a window on the model, a title strip with a line for each text. R12 files and most machines
/// and free readers are better off without.
/// </summary>
/// <param name="Width">Width of the sheet in mm, at least 50.</param>
/// <param name="Height">Height of the sheet in mm, at least 50.</param>
/// <param name="Scale">How many mm of the model are one mm on the sheet: 10 for 1:10.</param>
/// <param name="Title">The lines of the title strip, from the top; at most eight.</param>
public sealed record SheetLayout(double Width, double Height, double Scale, params ImmutableArray<string> Title);
