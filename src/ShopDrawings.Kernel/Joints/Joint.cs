using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>One screw in its place. Assembly space, mm.</summary>
/// <param name="Head">Centre of the head, in the face it enters.</param>
/// <param name="Tip">The point.</param>
public sealed record Fastener(Point3 Head, Point3 Tip);

/// <summary>
/// Two panels held by screws: they pass through one panel's face and hold in another panel's edge or face.
/// Every clearance hole and its pilot lie on one axis.
/// </summary>
/// <param name="Id">The two panels: <c>left-side/bottom</c>.</param>
/// <param name="Through">The panel the screws pass through.</param>
/// <param name="Entry">The face they enter.</param>
/// <param name="Receiving">The panel they hold in.</param>
/// <param name="Held">Its edge or face they enter.</param>
/// <param name="Screw">The screw.</param>
/// <param name="Row">How they spread along it.</param>
/// <param name="Fasteners">Each screw.</param>
public sealed record Joint(
    string Id, string Through, Surface Entry, string Receiving, Surface Held, Screw Screw, FastenerRow Row, ImmutableArray<Fastener> Fasteners);
