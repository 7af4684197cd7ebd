namespace ShopDrawings.Cutting;

/// <summary>Why a problem has no plan.</summary>
public enum RefusalReason
{
    /// <summary>A size, quantity, price or rule that cannot be meant.</summary>
    Nonsense,

    /// <summary>More parts, sizes or pieces than <see cref="Limits"/> allows.</summary>
    TooMany,

    /// <summary>A part that no sheet can hold, however it lies.</summary>
    TooLarge,

    /// <summary>A part that a sheet could hold if its grain let it turn.</summary>
    Grain,

    /// <summary>The saw's rules do not allow it.</summary>
    Rule,

    /// <summary>There are fewer sheets than are needed.</summary>
    TooLittleStock,
}

/// <summary>One reason why a problem has no plan, in words and numbers.</summary>
/// <param name="Reason">What kind it is.</param>
/// <param name="Subject">The part or stock size it is about; empty for the whole problem.</param>
/// <param name="Message">A sentence with its numbers, lengths in millimetres.</param>
/// <param name="MissingLength">By how much the nearest sheet is too short, in nanometres; 0 where it is not.</param>
/// <param name="MissingWidth">By how much that sheet is too narrow, in nanometres; 0 where it is not.</param>
public sealed record Refusal(RefusalReason Reason, string Subject, string Message, long MissingLength = 0, long MissingWidth = 0);
