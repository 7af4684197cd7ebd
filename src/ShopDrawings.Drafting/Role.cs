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

    /// <summary>A groove or rabbet.</summary>
    Groove,

    /// <summary>A scribed line or centre.</summary>
    Mark,

    /// <summary>An edge that other material hides.</summary>
    Hidden,

    /// <summary>A centre line.</summary>
    Centre,

    /// <summary>A dimension with its lines, terminators and text.</summary>
    Dimension,

    /// <summary>A note or a table.</summary>
    Lettering,

    /// <summary>Sheet frame and title block.</summary>
    Frame,

    /// <summary>A place a finding points at, and the stamp that withholds a drawing.</summary>
    Warning,
}
