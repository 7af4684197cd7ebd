namespace ShopDrawings.Cli;

/// <summary>What the process ends with.</summary>
internal static class ExitCode
{
    /// <summary>All is well.</summary>
    public const int Done = 0;

    /// <summary>Files were written, and the checks found errors.</summary>
    public const int DoneWithErrors = 1;

    /// <summary>The input or the call is wrong; nothing was written.</summary>
    public const int WrongInput = 2;

    /// <summary>Files could not be written, also where an exporter of the user's failed; nothing is half-written.</summary>
    public const int NotWritten = 3;

    /// <summary>A fault of the program; nothing was written.</summary>
    public const int OurFault = 4;

    /// <summary>Stopped by the user; nothing was changed, but <c>cut</c> wrote the best plan so far.</summary>
    public const int Interrupted = 130;
}

/// <summary>The user asked for something that cannot be done as asked.</summary>
internal sealed class WrongCallException(string message) : Exception(message);
