using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using ShopDrawings.Cutting;
using ShopDrawings.Kernel;
using ShopDrawings.Yaml;
using Range = ShopDrawings.Yaml.Range;

namespace ShopDrawings.ProjectFile;

/// <summary>An amount of money with at most two decimals, in hundredths inside.</summary>
internal sealed class PriceShape : Shape<Price>
{
    /// <inheritdoc/>
    public override string Expected => "a price like 64.90";

    /// <inheritdoc/>
    public override bool TryRead(YamlNode node, Reading reading, out Price value)
    {
        value = new Price(0, node.At);
        if (node is not YamlScalar { IsEmpty: false } scalar) return Misfit(node, reading, out value);
        var (coins, fault) = Read(scalar.Text);
        value = new Price(coins, node.At);
        return fault is null || reading.Fail(node.At, fault);
    }

    /// <inheritdoc/>
    public override JsonObject Schema() => new() { ["type"] = "number", ["minimum"] = 0 };

    /// <summary>A price in hundredths, or what is wrong with it.</summary>
    public static (long Coins, string? Fault) Read(string text)
    {
        const decimal Most = Limits.HighestPrice / 100m;
        if (!decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var price))
            return (0, $"“{text}” stands where a price like 64.90 is expected{(text.Contains(',') ? "; write decimals with a point" : "; write the number alone, without a currency")}");
        if (decimal.Round(price, 2) != price) return (0, $"“{text}” has more than two decimals; round it");
        return price <= Most ? ((long)(price * 100), null) : (0, $"“{text}” stands where a price of at most {Most.ToString(CultureInfo.InvariantCulture)} is expected");
    }
}

/// <summary>A price in hundredths, and where it is written.</summary>
internal sealed record Price(long Coins, SourceSpan At);

/// <summary>A stock sheet as written.</summary>
internal sealed record StockEntry(Word? Name, Size Length, Size Width, Price? Price, int? Count, TrimEntry? Trim, GrainDirection? Grain, bool IsOwn, SourceSpan At);

/// <summary>What is cut off the edges of a sheet that lies with its length from left to right.</summary>
internal sealed record TrimEntry(Size Left, Size Right, Size Front, Size Back);

/// <summary>A saw of one's own.</summary>
internal sealed record SawEntry(Size? Kerf, int? Stages, CutDirection? FirstCut, Size LeastStrip, Size? LongestCut, int? Cuts, SourceSpan At);

/// <summary>A store's saw.</summary>
internal sealed record StoreEntry(Size? Kerf, int Cuts, Size? Error, Price? Price, Size? Allowance, Size? Longest, Size? Heaviest, SourceSpan At);

/// <summary>A router that cuts panels out of sheets.</summary>
internal sealed record NestingEntry(Size Gap, Size? Margin, SourceSpan At);

/// <summary>How stock is cut.</summary>
internal sealed record CuttingEntry(SawEntry? Saw, StoreEntry? Store, NestingEntry? Router, Size? LeastOffcut, string Currency, int Effort, SourceSpan At);

/// <summary>Keys of the stock and of what cuts it.</summary>
internal static class CuttingShapes
{
    /// <summary>The most that <c>effort</c> multiplies the usual work by.</summary>
    public const int MostEffort = 1000;

    private static readonly NameShape Name = new();
    private static readonly PriceShape Money = new();
    private static readonly ChoiceShape<bool> YesNo = new(("yes", true), ("no", false));

    private static readonly EitherShape<TrimEntry> Trim = new(
        node => node is YamlScalar,
        new MappedShape<Size, TrimEntry>(Length("trim"), (all, _) => (new TrimEntry(all, all, all, all), null)),
        new RecordShape<TrimEntry>("the trim", f => new TrimEntry(
            f.Optional("left", Length("trim"), "Off the end of the length at the left.", Size.Zero, "0"),
            f.Optional("right", Length("trim"), "Off the end of the length at the right.", Size.Zero, "0"),
            f.Optional("front", Length("trim"), "Off the long edge that lies in front.", Size.Zero, "0"),
            f.Optional("back", Length("trim"), "Off the long edge behind.", Size.Zero, "0"))));

    private static readonly RecordShape<StockEntry> Sheet = new("a stock sheet", f => new StockEntry(
        f.Optional("name", Name, "What lists call it; its size where it is left out."),
        f.Required("length", Positive("stock-length"), "Its length; it is drawn from left to right."),
        f.Required("width", Positive("stock-width"), "Its width."),
        f.Optional("price", Money, "What one costs; left out for all, the least area is looked for."),
        f.Optional("count", new MappedShape<int, int?>(new CountShape(0, 100_000), (n, _) => (n, null)), "How many there are.", null, "as many as are needed, or one of your own"),
        f.Optional("trim", Trim, "Cut off each factory edge before anything else, the blade's width in it: one length, or by left, right, front and back."),
        f.Optional("grain", new MappedShape<GrainDirection, GrainDirection?>(new ChoiceShape<GrainDirection>(("length", GrainDirection.AlongLength), ("width", GrainDirection.AlongWidth)), (g, _) => (g, null)),
            "Which way the grain runs of a board that has one.", null, "length"),
        f.Optional("own", YesNo, "Whether it is an offcut of your own: it costs nothing.", false, "no"),
        f.At));

    /// <summary>Stock by the name of its board.</summary>
    public static readonly MapShape<ImmutableArray<StockEntry>> Stock = new(new ListShape<StockEntry>(Sheet, 200));

    private static readonly RecordShape<SawEntry> Saw = new("the saw", f => new SawEntry(
        f.Optional("kerf", Length("kerf"), "Width of the blade's cut; 3.2 mm where it is left out."),
        f.Optional("stages", new MappedShape<int, int?>(new CountShape(1, 20), (n, _) => (n, null)), "How often the direction of cutting may change, the first counted; a last cut that frees a panel from the end of its strip is not counted.", null, "any number"),
        f.Optional("first-cut", new MappedShape<CutDirection, CutDirection?>(new ChoiceShape<CutDirection>(("along", CutDirection.Along), ("across", CutDirection.Across)), (d, _) => (d, null)),
            "Whether the first cuts run along the sheet's length or across it.", null, "either"),
        f.Optional("least-strip", Length("least-strip"), "The narrowest piece that may lie between fence and blade.", Size.Zero, "0"),
        f.Optional("longest-cut", Positive("longest-cut"), "The longest cut the saw makes; any where it is left out."),
        f.Optional("cuts", new MappedShape<int, int?>(new CountShape(1, 10_000), (n, _) => (n, null)), "The most cuts in one sheet, trims included.", null, "any number"),
        f.At));

    private static readonly RecordShape<StoreEntry> Store = new("the store", f => new StoreEntry(
        f.Optional("kerf", Length("kerf"), "Width of its blade's cut; 4 mm where it is left out."),
        f.Required("cuts", new CountShape(1, 10_000), "The most cuts it makes in one sheet."),
        f.Optional("error", Length("store-error"), "How far a cut may be off, either way; 1 mm where it is left out."),
        f.Optional("price", Money, "What one cut costs; nothing where it is left out."),
        f.Optional("allowance", Length("blank-allowance"), "With a saw at home: what a blank carries on every edge, to be trimmed at home; 5 mm where it is left out."),
        f.Optional("longest", Positive("longest-piece"), "The longest side of a piece that can be carried home; any where it is left out."),
        f.Optional("heaviest", new NumberShape(Measure.Mass, Range.Positive, "heaviest-piece"), "The heaviest piece that can be carried home; any where it is left out."),
        f.At));

    private static readonly RecordShape<NestingEntry> Router = new("the router", f => new NestingEntry(
        f.Required("gap", Positive("tool-gap"), "The least distance between panels: the cutter's diameter and 2 to 4 mm (common practice, no source)."),
        f.Optional("margin", Length("clamp-margin"), "Kept clear along every edge of a sheet for clamps, beyond its trim; as much as the gap where it is left out."),
        f.At));

    /// <summary>How stock is cut.</summary>
    public static readonly RecordShape<CuttingEntry> Cutting = new("the cutting", CuttingOf);

    /// <summary>A file that says how stock is cut, with a unit of its own.</summary>
    public static readonly RecordShape<CuttingEntry> Rules = new("the file of rules", f =>
    {
        CatalogueShapes.FileUnit(f);
        return CuttingOf(f);
    });

    private static CuttingEntry CuttingOf(Fields f) => new(
        f.Optional("saw", Saw, "The saw at home: every cut goes through the whole piece. Left out with neither store nor router, one with a kerf of 3.2 mm."),
        f.Optional("store", Store, "A store's saw; with a “saw” it cuts blanks that are cut into panels at home, alone it cuts all panels."),
        f.Optional("router", Router, "A router that cuts the panels out where they lie."),
        f.Optional("least-offcut", Positive("least-offcut"), "An offcut is kept where both its sides are at least this; 100 mm where it is left out."),
        f.Optional("currency", new TextShape(), "What prices are in, such as € or crowns.", "", "none"),
        f.Optional("effort", new CountShape(1, MostEffort), "How many times the usual work, some two seconds, may go into the plan.", 1, "1"),
        f.At);

    private static NumberShape Positive(string rule) => new(Measure.Length, Range.Positive, rule);

    private static NumberShape Length(string rule) => new(Measure.Length, Range.NotNegative, rule);
}
