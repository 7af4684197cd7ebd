using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>One fastener in its place. Assembly space, mm.</summary>
/// <param name="Fastener">What it is.</param>
/// <param name="Along">Its place along the joint, from the beginning of the stretch where the panels meet.</param>
/// <param name="Head">Where it begins in the panel with the face: the centre of a screw's head.</param>
/// <param name="Tip">Where it ends in the held panel.</param>
public sealed record PlacedFastener(Fastener Fastener, Size Along, Point3 Head, Point3 Tip);

/// <summary>
/// Two panels joined: an edge or a face of one lies against a face of the other, or in a housing cut into it, and fasteners hold them.
/// All bores of one fastener lie on one axis, or at one place along the joint.
/// </summary>
/// <param name="Id">The two panels: <c>left-side/bottom</c>.</param>
/// <param name="Through">The panel with the face.</param>
/// <param name="Entry">Its face away from the other panel, where screws enter.</param>
/// <param name="Receiving">The panel that is held.</param>
/// <param name="Held">Its edge or face that lies against the other.</param>
/// <param name="Row">How the fasteners spread along it before any of them moved out of the way of something; nothing without fasteners.</param>
/// <param name="Fasteners">Each fastener.</param>
/// <param name="Housing">Depth of the groove or rabbet the edge sits in; nothing where it lies on the face.</param>
public sealed record Joint(
    string Id, string Through, Surface Entry, string Receiving, Surface Held, FastenerRow? Row, ImmutableArray<PlacedFastener> Fasteners, Size? Housing);
