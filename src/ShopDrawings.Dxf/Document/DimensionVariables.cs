using System.Collections.Immutable;

namespace ShopDrawings.Dxf;

/// <summary>
/// The variables of dimensions, written from this one list into the HEADER and into DIMSTYLE: some readers look only at the one, some
/// only at the other (DXF Reference, HEADER and DIMSTYLE).
/// </summary>
internal static class DimensionVariables
{
    // ISO 3098 lettering for shop drawings; the others relate to it as in the dimensions the drawing draws.
    private const double TextHeight = 3.5;

    /// <summary>Lengths in mm: name, group code in DIMSTYLE, value.</summary>
    public static ImmutableArray<(string Name, int Code, double Value)> Lengths { get; } =
    [
        ("$DIMASZ", 41, 0.9 * TextHeight), ("$DIMEXO", 42, 0.4 * TextHeight), ("$DIMDLI", 43, 2 * TextHeight), ("$DIMEXE", 44, 0.7 * TextHeight),
        ("$DIMTXT", 140, TextHeight), ("$DIMCEN", 141, 0), ("$DIMTSZ", 142, 0), ("$DIMGAP", 147, 0.35 * TextHeight),
    ];

    /// <summary>Factors: name, group code in DIMSTYLE, value.</summary>
    public static ImmutableArray<(string Name, int Code, double Value)> Factors { get; } = [("$DIMSCALE", 40, 1), ("$DIMLFAC", 144, 1)];

    /// <summary>Switches: name, group code in DIMSTYLE, value. Text along the line and above it, trailing zeros off.</summary>
    public static ImmutableArray<(string Name, int Code, int Value)> Switches { get; } =
        [("$DIMTOL", 71, 0), ("$DIMLIM", 72, 0), ("$DIMTIH", 73, 0), ("$DIMTOH", 74, 0), ("$DIMTAD", 77, 1), ("$DIMZIN", 78, 8)];

    /// <summary>Switches that came after R12: decimal numbers, two decimals, a point.</summary>
    public static ImmutableArray<(string Name, int Code, int Value)> LaterSwitches { get; } =
        [("$DIMDEC", 271, 2), ("$DIMLUNIT", 277, 2), ("$DIMDSEP", 278, '.')];
}
