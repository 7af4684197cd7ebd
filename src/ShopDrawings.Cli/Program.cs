using System.CommandLine;
using System.Runtime.InteropServices;
using System.Text;

namespace ShopDrawings.Cli;

/// <summary>The console host: reads the call, runs the verb, and turns whatever happens into an exit code.</summary>
internal static class Program
{
    private const string Teaching =
        """
        From one text file to panels that are cut right the first time: sizes, every hole where it belongs, checks before anything is
        cut, and 1:1 DXF files, drawings and lists.

        Start here:
          shopdrawings new cabinet.yaml             write a commented starter file
          shopdrawings make cabinet.yaml --out out  work everything out and write the folder out/
          shopdrawings cut panels.csv --stock stock.csv --out out  lay panels on the cheapest sheets, without a cabinet

        Exit codes: 0 done; 1 done, but the checks found errors (the panels concerned have no machine files); 2 the file or the call
        is wrong, nothing was written; 3 files could not be written, or an exporter of yours failed, nothing was written; 4 a fault of the
        program, nothing was written; 130 interrupted: nothing was changed, but “cut” writes the best plan it has.
        """;

    private static int Main(string[] args)
    {
        Console.OutputEncoding = new UTF8Encoding(false);
        using var stop = new CancellationTokenSource();
        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, c => Cancel(c, stop));
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, c => Cancel(c, stop));
        return Run(args, Console.Out, Console.Error, stop.Token);
    }

    /// <summary>Runs one call.</summary>
    internal static int Run(string[] args, TextWriter output, TextWriter error, CancellationToken stop)
    {
        try
        {
            var root = new RootCommand(Teaching) { NewCommand.Create(output), MakeCommand.Create(output, error, stop), CutCommand.Create(output, error, stop), SchemaCommand.Create(output) };
            var call = root.Parse(args);
            if (call.Errors.Count == 0 && call.Action is not null)
                return call.Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
            // An unknown verb is also a missing one; one word about it is enough.
            var unknown = call.UnmatchedTokens.Count > 0;
            foreach (var fault in call.Errors.Where(e => !unknown || call.UnmatchedTokens.Any(t => e.Message.Contains(t, StringComparison.Ordinal)))) error.WriteLine($"error: {fault.Message}");
            error.WriteLine("“shopdrawings --help” shows how to call it.");
            if (args.Contains("--json")) MakeReport.Write(output, ExitCode.WrongInput, string.Join("; ", call.Errors.Select(e => e.Message)));
            return ExitCode.WrongInput;
        }
        catch (Exception fault) when (ExitCodeOf(fault) is { } code)
        {
            error.WriteLine(code == ExitCode.Interrupted ? "interrupted; nothing was changed" : $"error: {fault.Message}");
            // For whoever wrote the exporter.
            if (fault is PlugInException { InnerException: { } cause }) error.WriteLine(cause);
            return code;
        }
#pragma warning disable CA1031 // The last line of defence: whatever a fault of ours is, it becomes exit code 4.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            error.WriteLine($"this is a fault of the program, not of your file; nothing was written: {fault}");
            return ExitCode.OurFault;
        }
    }

    /// <summary>What a foreseen failure ends with; nothing for a fault of ours.</summary>
    internal static int? ExitCodeOf(Exception fault) => fault switch
    {
        WrongCallException => ExitCode.WrongInput,
        OperationCanceledException => ExitCode.Interrupted,
        IOException or UnauthorizedAccessException or PlugInException => ExitCode.NotWritten,
        _ => null,
    };

    private static void Cancel(PosixSignalContext context, CancellationTokenSource stop)
    {
        context.Cancel = true;
        stop.Cancel();
    }
}
