namespace ShopDrawings.Drafting;

/// <summary>What an entity means. How it looks is decided by a <see cref="Style"/> given to the exporter.</summary>
public enum Role
{
    /// <summary>The outer edge of a panel.</summary>
    Outline,

    /// <summary>The edge of an opening through a panel.</summary>
    CutOut,

    /// <summary>A round hole.</summary>
    Bore,

    /// <summary>A cone for the head of a screw.</summary>
    Countersink,

    /// <summary>A groove or rabbet, or anything else that is milled away.</summary>
    Groove,

    /// <summary>A scribed line or centre.</summary>
    Mark,

    /// <summary>The edge of something that is only scored.</summary>
    Score,

    /// <summary>A name that is engraved.</summary>
    Name,

    /// <summary>A stretch of a cut that is lifted to leave a tab.</summary>
    Tab,

    /// <summary>A wanted edge that no tool of a machine makes.</summary>
    NoTool,

    /// <summary>A bore for a pin in a machine's table.</summary>
    Pin,

    /// <summary>An edge of a panel unfolded beside its face.</summary>
    EdgeView,

    /// <summary>A bore in an edge, in the view of that edge.</summary>
    EdgeBore,

    /// <summary>What is there already and not to be cut: a sheet, or a panel that is turned over.</summary>
    Reference,

    /// <summary>A square of known size, to check the scale by.</summary>
    ScaleSquare,

    /// <summary>An edge that other material hides.</summary>
    Hidden,

    /// <summary>A centre line.</summary>
    Centre,

    /// <summary>An edge that shows in a view that is there to be understood, not measured, and one behind the plane of a section.</summary>
    VisibleEdge,

    /// <summary>An extreme position of something that moves: an open door, an extended shelf.</summary>
    Phantom,

    /// <summary>The ends of a section's plane.</summary>
    CuttingPlane,

    /// <summary>The room a bought part takes, in a view.</summary>
    Hardware,

    /// <summary>The lines across a cut face.</summary>
    Hatching,

    /// <summary>A dimension with its lines, terminators and text.</summary>
    Dimension,

    /// <summary>A note or a table.</summary>
    Lettering,

    /// <summary>Sheet frame and title block.</summary>
    Frame,

    /// <summary>A place a finding points at, and the stamp that withholds a drawing.</summary>
    Warning,
}
