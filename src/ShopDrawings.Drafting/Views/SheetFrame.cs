using System.Collections.Immutable;
using System.Globalization;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>What a title block says of its sheet; what it says of the document is in <see cref="DocumentFields"/>.</summary>
/// <param name="Title">What the sheet shows.</param>
/// <param name="DocumentType">What kind of document it is.</param>
/// <param name="Project">What is built.</param>
/// <param name="Sheet">The number of the sheet, from 1.</param>
/// <param name="Sheets">How many there are.</param>
/// <param name="Scale">The n of a scale 1:n.</param>
/// <param name="Note">A general note.</param>
public sealed record TitleFields(string Title, string DocumentType, string Project, int Sheet, int Sheets, int Scale, string Note)
{
    /// <summary>The n of a scale n:1 where the drawing is larger than what it shows; else 1.</summary>
    public int Enlarged { get; init; } = 1;

    /// <summary>What the note is about.</summary>
    public string NoteLabel { get; init; } = "Note";
}

/// <summary>The frame of a sheet (ISO 5457) and its title block (ISO 7200), the same on every sheet.</summary>
public static class SheetFrame
{
    /// <summary>Height of the title block in mm.</summary>
    public const double TitleHeight = 44.5;

    /// <summary>Distance from line to line of notes in mm.</summary>
    public const double NotePitch = 5;

    // The first row holds the title, which is larger.
    private const double FirstRow = 13;
    private const double Row = (TitleHeight - FirstRow) / 3;
    private const double LargestInRow = 3.5;
    private const double NoteShare = 0.46;
    private const string ProjectionLabel = "Projection";

    private static readonly Layer FrameLayer = new("FRAME", Role.Frame, "Frame of the sheet");
    private static readonly Layer BlockLayer = new("TITLE_BLOCK", Role.Lettering, "Title block");
    private static readonly Layer NoteLayer = new("NOTES", Role.Lettering, "Notes");

    /// <summary>Frame, title block and notes.</summary>
    /// <param name="size">The sheet.</param>
    /// <param name="fields">What the title block says.</param>
    /// <param name="settings">What all sheets share.</param>
    /// <param name="notes">Lines beside or above the title block, each short enough for <see cref="Wrapped"/>.</param>
    public static IEnumerable<Entity> Of(SheetSize size, TitleFields fields, SheetSettings settings, ImmutableArray<string> notes)
    {
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(fields);
        ArgumentNullException.ThrowIfNull(settings);
        var (frame, block, standard, document) = (size.Frame, size.TitleBlock, settings.Standard, settings.Document);
        yield return Box(FrameLayer, frame);
        yield return Box(BlockLayer, block);
        var scale = string.Create(CultureInfo.InvariantCulture, $"{fields.Enlarged}:{fields.Scale}");
        var sheet = string.Create(CultureInfo.InvariantCulture, $"{fields.Sheet} of {fields.Sheets}");
        (string Label, string Value, double Share)[][] rows =
        [
            [("Title", fields.Title, 0.6), ("Project", fields.Project, 0.4)],
            [("Owner", document.Owner, 0.32), ("Drawn by", document.DrawnBy, 0.18), ("Approved by", document.ApprovedBy, 0.18), ("Date of issue", document.Date, 0.19), ("Revision", document.Revision, 0.13)],
            [("Document type", fields.DocumentType, 0.27), (fields.NoteLabel, fields.Note, NoteShare), ("Number", document.Number, 1 - 0.27 - NoteShare)],
            [("Lengths", settings.Lengths.Statement, 0.36), (ProjectionLabel, "", 0.2), ("Scale", scale, 0.16), ("Paper", size.Name, 0.12), ("Sheet", sheet, 0.16)],
        ];
        var (top, heights) = (block.Max.Y, new[] { standard.Large, standard.Normal, standard.Small });
        for (var r = 0; r < rows.Length; r++)
        {
            if (r > 0) yield return Line(new(block.Min.X, top), new(block.Max.X, top));
            var (x, bottom) = (block.Min.X, top - (r == 0 ? FirstRow : Row));
            foreach (var (label, value, share) in rows[r])
            {
                if (x > block.Min.X) yield return Line(new(x, top), new(x, bottom));
                yield return new TextEntity(BlockLayer, new(x + 2, top - 1.2 - standard.Small), standard.Small, label);
                var width = share * block.Width - 4;
                // The largest lettering that holds it; only titles are large.
                var height = heights.Skip(r == 0 ? 0 : standard.Normal > LargestInRow ? 2 : 1).FirstOrDefault(h => Lettering.Width(value, h) <= width, standard.Small);
                if (value.Length > 0) yield return new TextEntity(BlockLayer, new(x + 2, bottom + 1.8), height, Fitted(value, height, width));
                if (label == ProjectionLabel)
                    foreach (var entity in Symbol(new(x + share * block.Width / 2, bottom + 2.9), standard.IsThirdAngle)) yield return entity;
                x += share * block.Width;
            }

            top = bottom;
        }

        var y = size.HasRoomBesideTitle ? block.Max.Y - 3 - settings.Small : block.Max.Y + 2.5 + (notes.Length - 1) * NotePitch;
        foreach (var (note, i) in notes.Select((n, i) => (n, i)))
            yield return new TextEntity(NoteLayer, new(frame.Min.X + 3, y - i * NotePitch), settings.Small, note);
    }

    /// <summary>Room in mm for the note in the title block.</summary>
    internal static double NoteWidth(SheetSize size) => NoteShare * size.TitleBlock.Width - 4;

    /// <summary>Notes broken into lines that fit beside the title block, or above it.</summary>
    public static ImmutableArray<string> Wrapped(SheetSize size, IEnumerable<string> notes, SheetSettings settings)
    {
        ArgumentNullException.ThrowIfNull(size);
        ArgumentNullException.ThrowIfNull(notes);
        ArgumentNullException.ThrowIfNull(settings);
        var width = (size.HasRoomBesideTitle ? size.TitleBlock.Min.X - size.Frame.Min.X : size.Frame.Width) - 6;
        return [.. notes.SelectMany(n => Lettering.Lines(n.Split(' '), settings.Small, width)).Select(l => Fitted(l, settings.Small, width))];
    }

    /// <summary>The text, or as much of it as fits a width in mm with an ellipsis.</summary>
    internal static string Fitted(string text, double height, double width)
    {
        if (Lettering.Width(text, height) <= width) return text;
        var runes = text.EnumerateRunes().ToList();
        while (runes.Count > 0 && Lettering.Width(string.Concat(runes) + "…", height) > width) runes.RemoveAt(runes.Count - 1);
        return string.Concat(runes) + "…";
    }

    // A truncated cone, its narrow end at the left, and its view from the left: at the right of it in first angle, at its left in third
    // (ISO 5456-2, from memory).
    private static IEnumerable<Entity> Symbol(Point2 middle, bool isThirdAngle)
    {
        const double Narrow = 1.25;
        const double Wide = 2.5;
        const double Apart = 5;
        var (cone, circles) = isThirdAngle ? (middle + new Point2(Apart, 0), middle - new Point2(Apart, 0)) : (middle - new Point2(Apart, 0), middle + new Point2(Apart, 0));
        var half = new Point2(2.5, 0);
        Point2[] corners = [cone - half - new Point2(0, Narrow), cone + half - new Point2(0, Wide), cone + half + new Point2(0, Wide), cone - half + new Point2(0, Narrow)];
        yield return new ContourEntity(BlockLayer, Contour.FromSegments(corners.Select((c, i) => new Segment(c, corners[(i + 1) % 4]))));
        yield return new CircleEntity(BlockLayer, circles, Narrow);
        yield return new CircleEntity(BlockLayer, circles, Wide);
    }

    private static ContourEntity Box(Layer layer, Box2 box) => new(layer, Contour.Rectangle(box.Min.X, box.Min.Y, box.Max.X, box.Max.Y));

    private static SegmentEntity Line(Point2 from, Point2 to) => new(BlockLayer, new Segment(from, to));
}
