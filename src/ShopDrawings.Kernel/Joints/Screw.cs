namespace ShopDrawings.Kernel;

/// <summary>A wood screw by its dimensions, in mm.</summary>
/// <param name="Name">What panels and lists call it.</param>
/// <param name="Diameter">Outer diameter of the thread.</param>
/// <param name="Length">Length under a flush head.</param>
/// <param name="HeadDiameter">Diameter of the head.</param>
/// <param name="Clearance">Diameter of the hole it passes through freely.</param>
/// <param name="EdgePilot">Diameter of the hole it cuts its thread into, in the edge of a panel.</param>
public sealed record Screw(string Name, Size Diameter, Size Length, Size HeadDiameter, Size Clearance, Size EdgePilot);
