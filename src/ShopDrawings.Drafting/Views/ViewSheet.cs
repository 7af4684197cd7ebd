using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>A sheet with one view.</summary>
/// <param name="Name">The name its file is given.</param>
/// <param name="Title">What it shows.</param>
/// <param name="Type">What kind of document it is.</param>
/// <param name="View">The view.</param>
/// <param name="Spans">What is worth a dimension.</param>
/// <param name="Notes">What is said beside the title block.</param>
internal sealed record ViewSheet(string Name, string Title, string Type, AssemblyView View, ImmutableArray<Span> Spans, ImmutableArray<string> Notes)
{
    /// <summary>The letter of the section it shows; empty where it shows none.</summary>
    public string Letter { get; init; } = "";

    /// <summary>The planes of sections that are marked in the view.</summary>
    public ImmutableArray<SectionMark> Sections { get; init; } = [];

    /// <summary>The parts of the view that are shown at a larger scale elsewhere.</summary>
    public ImmutableArray<DetailMark> Details { get; init; } = [];

    /// <summary>The view with its dimensions in the middle of the room.</summary>
    public Drawing Draw(string project, SheetSettings settings, string note, int number, int count)
    {
        var layout = new ViewLayout(View, Spans, settings) { Sections = Sections, Details = Details };
        List<string> All(int scale) => [.. Notes, .. layout.LeftOut(scale)];
        var choice = Choose(layout, settings, All);
        var notes = SheetFrame.Wrapped(choice.Size, All(choice.Scale), settings);
        var corner = choice.Size.Room(notes.Length).Centre - layout.Around(choice.Scale).Centre;
        var fields = new TitleFields(Title, Type, project, number, count, choice.Scale, note);
        return new Drawing($"{project}: {Title}", string.Create(CultureInfo.InvariantCulture, $"{Title} of {project}, scale 1:{choice.Scale}."), choice.Size.Page,
            [.. SheetFrame.Of(choice.Size, fields, settings, notes), .. layout.Draw(choice.Scale, corner)]);
    }

    /// <summary>The n of the scale 1:n it is drawn at.</summary>
    public int Scale(SheetSettings settings)
    {
        var layout = new ViewLayout(View, Spans, settings) { Sections = Sections };
        return Choose(layout, settings, scale => [.. Notes, .. layout.LeftOut(scale)]).Scale;
    }

    private SheetChoice Choose(ViewLayout layout, SheetSettings settings, Func<int, List<string>> notes) =>
        SheetChoice.Of(settings, Notes, (scale, size) =>
        {
            var around = layout.Around(scale);
            var more = SheetFrame.Wrapped(size, notes(scale), settings).Length - SheetFrame.Wrapped(size, Notes, settings).Length;
            return (new Point2(around.Width, around.Height + (size.HasRoomBesideTitle ? 0 : more * SheetFrame.NotePitch)), around.Width * around.Height);
        });
}
