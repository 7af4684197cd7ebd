using System.Collections.Immutable;
using ShopDrawings.Drafting;
using ShopDrawings.Dxf;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;

namespace ShopDrawings.ProjectFile;

/// <summary>How drawings are wanted, as far as the file says; what follows from its unit is not filled in.</summary>
internal sealed record DrawingEntry(
    DrawingStandard? Standard, (bool? IsInches, bool HasBoth) Lengths, FractionForm Fractions, int Denominator, ImmutableArray<string> Formats, int Resolution,
    DxfRelease Release, DocumentFields Document)
{
    /// <summary>The settings of a project that counts in inches or feet, or in a metric unit.</summary>
    public DrawingSettings Of(bool isInches)
    {
        var lengths = (Lengths.IsInches ?? isInches ? LengthStyle.Inches : LengthStyle.Millimetres) with { HasBoth = Lengths.HasBoth, Fractions = Fractions, Denominator = Denominator };
        return new(new(Standard ?? (isInches ? DrawingStandard.Asme : DrawingStandard.Iso), lengths) { Document = Document }) { Formats = Formats, DotsPerInch = Resolution, Release = Release };
    }
}

/// <summary>Every key of the drawings, once.</summary>
internal static class DrawingShapes
{
    // The largest sheet at the finest resolution is what a picture may have at most.
    private const int Coarsest = 50, Finest = 600;
    private const int UsualDenominator = 32;
    private const int UsualResolution = 150;

    private static readonly ImmutableArray<string> UsualFormats = ["svg", DrawingSettings.Book];

    private static readonly ChoiceShape<DrawingStandard?> Standards = new(("iso", DrawingStandard.Iso), ("asme", DrawingStandard.Asme));

    private static readonly ChoiceShape<(bool?, bool)> Lengths = new(("mm", (false, false)), ("in", (true, false)), ("both", (null, true)));

    private static readonly ChoiceShape<FractionForm> Fractions = new(("stacked", FractionForm.Stacked), ("plain", FractionForm.Plain), ("decimal", FractionForm.Decimals));

    private static readonly ChoiceShape<int> Denominators = new(("16", 16), ("32", 32), ("64", 64));

    private static readonly ChoiceShape<DxfRelease> Releases = new(("R12", DxfRelease.R12), ("R2000", DxfRelease.R2000), ("R2010", DxfRelease.R2010));

    private static readonly MappedShape<ImmutableArray<string>, ImmutableArray<string>> Formats = new(
        new ListShape<string>(new ChoiceShape<string>(("svg", "svg"), (DrawingSettings.Book, DrawingSettings.Book), ("png", "png"), ("dxf", "dxf")), 10),
        (formats, _) => (formats, formats.GroupBy(f => f).FirstOrDefault(g => g.Count() > 1) is { } twice ? $"“{twice.Key}” stands more than once; one file of each sheet is written" : null));

    private static readonly RecordShape<DocumentFields> Document = new("the title block", "a group like “owner: North Street Workshop”", f => new DocumentFields
    {
        Owner = Field(f, "owner", "The legal owner: a person, a shop."),
        Number = Field(f, "number", "The identification number of the drawings."),
        Revision = Field(f, "revision", "The revision index, such as B."),
        Date = Field(f, "date", "The date of issue, printed as it is written."),
        DrawnBy = Field(f, "drawn-by", "Who made the drawings."),
        ApprovedBy = Field(f, "approved-by", "Who approved them."),
    });

    /// <summary>The drawings.</summary>
    public static RecordShape<DrawingEntry> Drawings { get; } = new("the drawings", "a group like “standard: iso”", f => new DrawingEntry(
        f.Optional("standard", Standards, "The drawing practice: iso, or asme with US sheets, third angle, wider lines, larger lettering, and dimensions in their lines.", null, "asme where the file’s unit is in or ft, else iso"),
        f.Optional("lengths", Lengths, "Lengths in mm, in inches, or sizes in both: in the file’s unit, with the other in brackets.", (null, false), "mm, or in where the file’s unit is in or ft"),
        f.Optional("fractions", Fractions, "Fractions of an inch stacked as on a tape; plain in a line; or as decimals.", FractionForm.Stacked, "stacked"),
        f.Optional("denominator", Denominators, "The finest part of an inch that sizes and places are rounded to; diameters and depths are rounded to 64ths.", UsualDenominator, "32"),
        f.Optional("formats", Formats, "The files they are written in: svg, png and dxf, one for each sheet, and pdf, one for all.", UsualFormats, "svg and pdf"),
        f.Optional("resolution", new CountShape(Coarsest, Finest), "Dots per inch of a png.", UsualResolution, "150"),
        f.Optional("release", Releases, "The release of a dxf; only R2010 holds texts outside ASCII.", DxfRelease.R2000, "R2000"),
        f.Optional("title-block", Document, "What title blocks say of the drawings; what is left out can be filled in by hand.") ?? new DocumentFields()));

    /// <summary>What they are where the file says nothing.</summary>
    public static DrawingEntry Usual { get; } = new(null, (null, false), FractionForm.Stacked, UsualDenominator, UsualFormats, UsualResolution, DxfRelease.R2000, new());

    private static string Field(Fields f, string key, string help) => f.Optional(key, new TextShape(), help, "", "nothing");
}
