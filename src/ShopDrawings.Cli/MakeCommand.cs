using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using ShopDrawings.Drafting;
using ShopDrawings.Kernel;

namespace ShopDrawings.Cli;

/// <summary><c>make</c>: from a project file to a folder of files.</summary>
internal sealed class MakeCommand(TextWriter output, TextWriter error, CancellationToken stop)
{
    /// <summary>The verb.</summary>
    public static Command Create(TextWriter output, TextWriter error, CancellationToken stop)
    {
        var file = new Argument<string>("FILE") { Description = "The project file." };
        var folder = new Option<string>("--out") { Description = "The folder to write; it is replaced as a whole, and only if this program wrote it.", DefaultValueFactory = _ => "out", HelpName = "DIR" };
        var json = new Option<bool>("--json") { Description = "Say what happened as JSON on standard output, for scripts." };
        var exporters = new Option<string[]>("--exporters") { Description = "An assembly with exporters of your own; may be given several times. Its code runs as you: name only what you trust.", HelpName = "DLL" };
        var scale = new Option<string?>("--printer-scale") { Description = "How your printer is off, for templates: what 100 mm of the printed square measure across and up, divided by 100, such as 0.996,1.002.", HelpName = "X,Y" };
        var command = new Command("make", "Work everything out and write 1:1 DXF files, drawings, lists, assembly.json and findings.json.") { file, folder, exporters, scale, json };
        command.SetAction(call =>
        {
            var make = new MakeCommand(output, error, stop);
            return make.Run(call.GetValue(file)!, call.GetValue(folder)!, call.GetValue(exporters) ?? [], ScaleOf(call.GetValue(scale)), call.GetValue(json));
        });
        return command;
    }

    private int Run(string file, string folder, string[] plugIns, PrinterScale? scale, bool asJson)
    {
        MakeResult result;
        try
        {
            result = Make(file, folder, plugIns, scale);
        }
        catch (Exception fault) when (asJson && Program.ExitCodeOf(fault) is { } code)
        {
            MakeReport.Write(output, code, fault.Message);
            throw;
        }

        var complaints = new Complaints(error);
        complaints.Say(result.Diagnostics);
        complaints.Say((result.Job?.Findings ?? []).Select(Line), "findings in findings.json");

        if (asJson) MakeReport.Write(output, result, folder);
        else if (result.Job is { } job) output.WriteLine(Summary(job, result.Files.Length, folder));
        else complaints.SayNothingWritten(result.Diagnostics.Length);
        return result.ExitCode;
    }

    private static PrinterScale? ScaleOf(string? text)
    {
        if (text is null) return null;
        double[] shares = [.. text.Split(',').Select(t => double.TryParse(t, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) ? share : double.NaN)];
        return shares is [var x, var y] && new PrinterScale(x, y) is { IsSound: true } scale
            ? scale
            : throw new WrongCallException(string.Create(CultureInfo.InvariantCulture, $"“{text}” is no printer scale; write what is measured divided by what it should be, across and up, each from {PrinterScale.Least} to {PrinterScale.Greatest}, such as 0.996,1.002"));
    }

    private static string Line(Finding finding)
    {
        var word = finding.Waiver is null ? finding.Severity.ToString().ToLowerInvariant() : "waived";
        return $"{word}: {finding.Rule}: {finding.Message}; {(finding.Waiver is { } reason ? $"waived because: {reason}" : finding.Cure)}";
    }

    private MakeResult Make(string file, string folder, string[] plugIns, PrinterScale? scale)
    {
        var exporters = plugIns.Length == 0 ? ExporterSet.Standard : PlugIns.Load(plugIns, error);
        using var target = OutputFolder.At(folder);
        var (text, fault) = InputText.Read(file, "a project file");
        if (text is null) return new([fault!], null, []);
        var loaded = Shop.Load(text, file, ProjectFolder.Of(file));
        if (loaded.Value is not { } project) return new(loaded.Diagnostics, null, []);
        if (scale is { } off) project = project.PrintedBy(off);
        var resolved = Shop.Resolve(project, project.IsSearchLong ? new SearchProgress(error) : null, stop);
        stop.ThrowIfCancellationRequested();
        if (resolved.Value is not { } design) return new(resolved.Diagnostics, null, []);
        if (Unwritten(design, exporters) is { IsEmpty: false } unwritten) return new(unwritten, null, []);
        var job = Shop.Draw(design, Shop.Check(design));
        try
        {
            var files = Shop.Export(job, exporters);
            target.Publish(files, stop);
            return new([], job, [.. files.Select(f => f.Path)]);
        }
        catch (ExporterException failure) when (PlugInContext.FileOf(failure.Exporter) is { } plugIn)
        {
            throw new PlugInException(plugIn, failure);
        }
    }

    // Which formats there are only the host knows, which loads the exporters.
    private static ImmutableArray<Diagnostic> Unwritten(Design design, ExporterSet exporters) =>
    [
        .. design.Profiles.Where(p => exporters.Find(p.Format) is null).Select(p => new Diagnostic(p.FormatAt,
            $"nothing writes “{p.Format}”; known are {string.Join(", ", exporters.Drawings.Select(d => d.Format))}; name the assembly of an exporter with --exporters, or change the format")),
    ];

    private static string Summary(Job job, int files, string folder)
    {
        var assembly = job.Design.Assembly;
        var bores = assembly.Panels.Sum(p => p.Features.OfType<Bore>().Count());
        var withheld = job.Withheld.Length;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{assembly.Name}: {Count(assembly.Panels.Length, "panel")}, {Count(bores, "bore")}, {Count(assembly.Joints.Length, "joint")}; {Count(files, "file")} in {folder}{(withheld > 0 ? $"; {Count(withheld, "panel")} withheld from cutting" : "")}");
    }

    private static string Count(int count, string what) => string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}

/// <summary>What came of a call.</summary>
internal sealed record MakeResult(ImmutableArray<Diagnostic> Diagnostics, Job? Job, ImmutableArray<string> Files)
{
    /// <summary>What the process ends with.</summary>
    public int ExitCode => Job is null ? Cli.ExitCode.WrongInput : Job.Findings.Any(f => f.Withholds) ? Cli.ExitCode.DoneWithErrors : Cli.ExitCode.Done;
}
