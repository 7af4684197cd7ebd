using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>
/// What holds two panels together, by its dimensions in mm: a screw, a dowel, a cam connector. It knows the bores one of its kind needs along
/// one axis; how many there are and where is the joint's business.
/// </summary>
/// <param name="Name">What panels and lists call it.</param>
public abstract record Fastener(string Name)
{
    /// <summary>What lists call its kind.</summary>
    public abstract string Kind { get; }

    /// <summary>Its dimensions for lists.</summary>
    public abstract string Dimensions { get; }

    /// <summary>Whether it is driven from outside, so that nothing may stand before its head.</summary>
    public virtual bool IsDriven => false;

    /// <summary>Diameter of what shows where it enters.</summary>
    internal abstract Size Mouth { get; }

    /// <summary>The bores of one fastener.</summary>
    /// <param name="through">Thickness of the panel whose face the other lies against, less a housing cut into it.</param>
    /// <param name="receiving">Thickness of the panel that is held.</param>
    internal abstract IEnumerable<FastenerBore> Bores(Size through, Size receiving);

    /// <summary>How far it reaches from the plane where the panels meet: into the face (away from the held panel), and into the held panel.</summary>
    internal abstract (Size IntoFace, Size IntoHeld) Reach(Size through, Size receiving);
}

/// <summary>Where a fastener's bore is drilled.</summary>
internal enum Site
{
    /// <summary>In the panel with the face, from the face away from the held panel.</summary>
    Entry,

    /// <summary>In the panel with the face, from the face the held panel lies against.</summary>
    Contact,

    /// <summary>In the held panel, from the edge or face that lies against the other.</summary>
    Held,

    /// <summary>In the held panel, from one of its faces beside the joint.</summary>
    Beside,
}

/// <summary>One bore of a fastener. Lengths in mm.</summary>
/// <param name="Site">Where it is drilled.</param>
/// <param name="Diameter">Diameter.</param>
/// <param name="Depth">Depth, or nothing for a bore that goes through.</param>
/// <param name="Use">What it is for.</param>
/// <param name="Away">Beside: from the plane where the panels meet. Contact: from the held panel's face, or nothing on its middle.</param>
internal sealed record FastenerBore(Site Site, Size Diameter, Size? Depth, BoreUse Use, Size? Away = null);
