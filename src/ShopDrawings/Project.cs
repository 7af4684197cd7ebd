using ShopDrawings.Drafting;
using ShopDrawings.Kernel;
using ShopDrawings.ProjectFile;

namespace ShopDrawings;

/// <summary>A project file that was read and found sound in itself. Made by <see cref="Shop.Load"/>. Immutable.</summary>
public sealed class Project
{
    internal Project(ProjectModel model, LengthStyle lengths) => (Model, Lengths) = (model, lengths);

    /// <summary>What is built.</summary>
    public string Name => Model.Name;

    /// <summary>How messages print lengths: in inches where the file counts in inches or feet, else in mm.</summary>
    public LengthStyle Lengths { get; }

    /// <summary>Whether the file asks for more than the usual work in the search for the cheapest sheets.</summary>
    public bool IsSearchLong => Model.Cutting is { Effort: > 1 };

    internal ProjectModel Model { get; }

    /// <summary>The same project for a printer that is off; it comes before what the file says.</summary>
    /// <param name="scale">How the printer is off.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is further off than printers are, see <see cref="PrinterScale.IsSound"/>.</exception>
    public Project PrintedBy(PrinterScale scale) => scale.IsSound
        ? new(Model with { Templates = Model.Templates with { Printer = scale } }, Lengths)
        : throw new ArgumentOutOfRangeException(nameof(scale), scale, "A printer is off by 5 % at most.");
}
