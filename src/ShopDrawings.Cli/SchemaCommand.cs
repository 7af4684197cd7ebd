using System.CommandLine;

namespace ShopDrawings.Cli;

/// <summary><c>schema</c>: prints a JSON Schema, so that an editor completes and checks project files.</summary>
internal static class SchemaCommand
{
    /// <summary>The verb.</summary>
    public static Command Create(TextWriter output)
    {
        var which = new Argument<string>("WHICH") { Description = "project, catalogue, assembly or findings.", DefaultValueFactory = _ => "project" };
        which.AcceptOnlyFromAmong("project", "catalogue", "assembly", "findings");
        var command = new Command("schema", "Print the JSON Schema of the project file, of a catalogue, of assembly.json or of findings.json.") { which };
        command.SetAction(call =>
        {
            output.Write(call.GetValue(which) switch { "catalogue" => Schemas.Catalogue, "assembly" => Schemas.Assembly, "findings" => Schemas.Findings, _ => Schemas.Project });
            return ExitCode.Done;
        });
        return command;
    }
}
