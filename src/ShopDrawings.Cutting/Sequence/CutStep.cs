namespace ShopDrawings.Cutting;

/// <summary>An edge of a piece as it lies on the sheet.</summary>
public enum PieceEdge
{
    /// <summary>Where the length begins.</summary>
    Start,

    /// <summary>Where the length ends.</summary>
    End,

    /// <summary>The side across which y begins.</summary>
    Near,

    /// <summary>The side opposite.</summary>
    Far,
}

/// <summary>What a piece that comes off the saw is.</summary>
public enum OutcomeKind
{
    /// <summary>A piece to be cut further.</summary>
    Piece,

    /// <summary>A finished part.</summary>
    Part,

    /// <summary>A rectangle to keep or throw away.</summary>
    Offcut,

    /// <summary>A strip trimmed off an edge, or what is thinner than the blade.</summary>
    Waste,
}

/// <summary>One cut. Lengths in nanometres.</summary>
/// <param name="Number">Its number in the sequence, from 1.</param>
/// <param name="Sheet">Which sheet of the plan it is about.</param>
/// <param name="Stage">1 for the first cuts in a trimmed sheet, one more with every change of direction; 0 for trims of the sheet.</param>
/// <param name="Piece">The mark of the piece that is laid on the saw.</param>
/// <param name="Direction">Which way the blade goes.</param>
/// <param name="Against">The edge of the piece that lies against the fence.</param>
/// <param name="Setting">The fence's distance from the blade: what is between them afterwards measures exactly this.</param>
/// <param name="Fence">The number of the fence setting, from 1; equal and following steps share it.</param>
/// <param name="Comes">The mark of what was between fence and blade.</param>
/// <param name="ComesAs">What that is.</param>
/// <param name="Stays">The mark of what is on the blade's other side; empty where the blade leaves nothing there.</param>
/// <param name="StaysAs">What that is.</param>
/// <param name="AtHome">Whether it is done at home, after a store cut blanks.</param>
public sealed record CutStep(int Number, int Sheet, int Stage, string Piece, CutDirection Direction, PieceEdge Against, long Setting, int Fence,
    string Comes, OutcomeKind ComesAs, string Stays, OutcomeKind StaysAs, bool AtHome);
