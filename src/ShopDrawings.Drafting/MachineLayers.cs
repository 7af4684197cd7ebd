using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using ShopDrawings.Kernel;

namespace ShopDrawings.Drafting;

/// <summary>
/// How the layers of machine drawings are called, one for each kind of machining. The names can be read aloud: the face first, then the kind,
/// then sizes in hundredths of a millimetre, whatever the file's unit: <c>INSIDE_BORE_500_DEEP_1200</c> is a 5 mm bore 12 mm deep in the inside face, <c>THRU</c> goes
/// through. Lines that are the wanted edge and lines that a tool's middle follows never share a name, so that nobody compensates twice.
/// A pattern may hold <c>{face}</c>, <c>{edge}</c>, <c>{tool}</c> (the diameter of the tool) and <c>{depth}</c>. Immutable.
/// </summary>
public sealed class MachineLayers
{
    /// <summary>Longest name a DXF of every release holds.</summary>
    public const int LongestName = 31;

    private static readonly ImmutableDictionary<Role, Kind> Kinds = ImmutableDictionary.CreateRange(
    [
        Of(Role.Outline, "OUTLINE", "OUTLINE_PATH_{tool}", "Outer edge of the panel"),
        Of(Role.CutOut, "CUTOUT", "CUTOUT_PATH_{tool}", "Openings through the panel"),
        Of(Role.Bore, "{face}_BORE_{tool}_{depth}", null, "Bores"),
        Of(Role.Countersink, "{face}_BORE_{tool}_{depth}", null, "Countersinks"),
        Of(Role.Groove, "{face}_POCKET_{tool}_{depth}", "{face}_PATH_{tool}_{depth}", "Grooves and pockets"),
        Of(Role.Mark, "{face}_MARK", null, "Scribed lines and centres"),
        Of(Role.Score, "{face}_SCORE", null, "Edges of what is only scored"),
        Of(Role.Name, "{face}_NAME", null, "Engraved names"),
        Of(Role.Tab, "TAB_{depth}", "BETWEEN_TABS_{tool}_{depth}", "Stretches of the cut: as deep as it is at the tabs, or through between them"),
        Of(Role.Pin, "PIN_{tool}_{depth}", null, "Bores for locating pins in the table"),
        Of(Role.EdgeView, "EDGE_{edge}", null, "An edge, unfolded beside the face"),
        Of(Role.EdgeBore, "EDGE_{edge}_{tool}_{depth}", null, "Bores in an edge, unfolded beside the face"),
        Of(Role.NoTool, "NO_TOOL", null, "Wanted edges that no tool of the machine makes; not to be followed"),
        Of(Role.Reference, "REFERENCE", null, "There already; not to be cut"),
        Of(Role.ScaleSquare, "SCALE_{tool}", null, "A square of known size, to check the scale by; not to be cut"),
    ]);

    private readonly ImmutableDictionary<Role, string> patterns;

    private MachineLayers(ImmutableDictionary<Role, string> patterns) => this.patterns = patterns;

    /// <summary>Names of our own.</summary>
    public static MachineLayers Standard { get; } = new(ImmutableDictionary<Role, string>.Empty);

    /// <summary>The kinds of machining that have layers.</summary>
    public static ImmutableArray<Role> Roles { get; } = [.. Kinds.Keys.Order()];

    /// <summary>The same names with another pattern for one kind, for finished edges and tool ways alike.</summary>
    /// <exception cref="ArgumentException">The kind has no layers, or the pattern gives no layer name: see <see cref="Fault"/>.</exception>
    public MachineLayers With(Role role, string pattern) =>
        Fault(role, pattern) is { } fault ? throw new ArgumentException(fault, nameof(pattern)) : new(patterns.SetItem(role, pattern));

    /// <summary>What is wrong with a pattern, in words, or nothing.</summary>
    public static string? Fault(Role role, string pattern)
    {
        if (!Kinds.ContainsKey(role)) return $"{role} has no layers";
        var isEdge = role is Role.EdgeView or Role.EdgeBore;
        var longest = Filled(pattern, isEdge ? "{face}" : "OUTSIDE", isEdge ? "BOTTOM" : "{edge}", "10000", "DEEP_10000") + (IsSuffixed(role, pattern) ? "_DEEP_10000" : "");
        if (longest.AsSpan().ContainsAny('{', '}')) return $"“{pattern}” has a brace that stands for nothing here; only {(isEdge ? "{edge}" : "{face}")}, {{tool}} and {{depth}} do";
        if (longest.Length == 0 || !char.IsAsciiLetterUpper(longest[0]) || !longest.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '_'))
            return $"“{pattern}” gives no layer name that every program reads; use A to Z, 0 to 9 and _, a letter first";
        return longest.Length <= LongestName ? null : string.Create(CultureInfo.InvariantCulture, $"“{pattern}” gives names of up to {longest.Length} characters, such as {longest}; every program reads {LongestName}");
    }

    /// <summary>Two patterns that are not the same and yet can give one name, or nothing.</summary>
    public (string One, string Other)? Clash()
    {
        var all = Roles.SelectMany(r => new[] { Pattern(r, false), Pattern(r, true) }.SelectMany(p => IsSuffixed(r, p) ? [(p, p), (p, $"{p}_{{depth}}")] : new[] { (Pattern: p, Full: p) })).Distinct().ToList();
        foreach (var one in all)
            foreach (var other in all)
                if (one.Pattern != other.Pattern && Samples(one.Full).Any(name => Regex.IsMatch(name, Expression(other.Full)))) return (one.Pattern, other.Pattern);
        return null;
    }

    private static IEnumerable<string> Samples(string pattern) =>
        from depth in new[] { "THRU", "DEEP_1200", "SINK_450", "" } select Filled(pattern, "INSIDE", "FRONT", "500", depth);

    private static string Expression(string pattern) => $"^{Filled(pattern, "(INSIDE|OUTSIDE)", "[A-Z]+", "[0-9]+", "(THRU|(DEEP|SINK)_[0-9]+)")}$";

    /// <summary>The layer of an operation's lines.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="form">Whether its lines are the wanted edge or the tool's way.</param>
    public Layer Of(MachineOperation operation, CutLines form)
    {
        var role = operation switch
        {
            DrillOperation { IsForPin: true } => Role.Pin,
            DrillOperation { Tool.Kind: ToolKind.Countersink } => Role.Countersink,
            DrillOperation => Role.Bore,
            PocketOperation => Role.Groove,
            EngraveOperation { What: Engraving.Mark } => Role.Mark,
            EngraveOperation { What: Engraving.Score } => Role.Score,
            EngraveOperation => Role.Name,
            ProfileOperation { IsOutside: true } => Role.Outline,
            _ => Role.CutOut,
        };
        if (form == CutLines.ToolCentre && operation is PocketOperation or ProfileOperation && !operation.Tool.IsKnown) return Make(Role.NoTool, false, operation.Face, "", 0, "");
        var isPath = form == CutLines.ToolCentre && operation is PocketOperation or ProfileOperation;
        // What a drill or countersink makes is as wide as the bore, a cutter is as wide as it is.
        var size = operation is DrillOperation drill ? drill.Diameter : operation.Tool.Diameter;
        var layer = Make(role, isPath, operation.Face, "", size, role == Role.Countersink ? $"SINK_{Hundredths(operation.Depth!.Value)}" : Depth(operation.Depth));
        return operation.Depth is { } skinned && IsSuffixed(role, Pattern(role, isPath)) ? Suffixed(layer, Depth(skinned)) : layer;
    }

    /// <summary>The layer of the tabs a cut leaves, or in the tool's way of what goes through between them.</summary>
    public Layer OfTabs(ProfileOperation profile, CutLines form) =>
        Make(Role.Tab, form == CutLines.ToolCentre, profile.Face, "", profile.Tool.Diameter, Depth(form == CutLines.ToolCentre ? null : profile.TabDepth));

    /// <summary>The layer of an edge's own view.</summary>
    public Layer OfEdge(string edge) => Make(Role.EdgeView, false, Surface.Inside, edge, 0, "");

    /// <summary>The layer of bores in an edge.</summary>
    /// <param name="edge">Where the edge looks: <c>front</c>.</param>
    /// <param name="bore">The bore.</param>
    public Layer OfEdgeBore(string edge, Bore bore) => Make(Role.EdgeBore, false, bore.Surface, edge, bore.Diameter.Value, Depth(bore.Depth?.Value));

    /// <summary>The layer of what is there already.</summary>
    public Layer Reference => Make(Role.Reference, false, Surface.Inside, "", 0, "");

    /// <summary>The layer of a scale square of a size in mm.</summary>
    public Layer OfScaleSquare(double size) => Make(Role.ScaleSquare, false, Surface.Inside, "", size, "");

    private Layer Make(Role role, bool isPath, Surface face, string edge, double tool, string depth)
    {
        var pattern = Pattern(role, isPath);
        // Kinds that share a pattern of the user's share its layers.
        if (patterns.ContainsValue(pattern)) (role, isPath) = (Roles.First(r => Pattern(r, false) == pattern || Pattern(r, true) == pattern), false);
        var name = Filled(pattern, face == Surface.Outside ? "OUTSIDE" : "INSIDE", edge.ToUpperInvariant(), Hundredths(tool), depth);
        return new Layer(name.Length <= LongestName ? name : name[..LongestName], role, isPath ? $"{Kinds[role].Title}: the way of the tool’s middle" : Kinds[role].Title);
    }

    private static Layer Suffixed(Layer layer, string suffix) => new($"{layer.Name}_{suffix}", layer.Role, layer.Title);

    private string Pattern(Role role, bool isPath) => patterns.TryGetValue(role, out var own) ? own : isPath ? Kinds[role].Path ?? Kinds[role].Finished : Kinds[role].Finished;

    private static string Filled(string pattern, string face, string edge, string tool, string depth) => pattern
        .Replace("{face}", face, StringComparison.Ordinal).Replace("{edge}", edge, StringComparison.Ordinal)
        .Replace("{tool}", tool, StringComparison.Ordinal).Replace("{depth}", depth, StringComparison.Ordinal);

    // A cut above a skin says its depth, also where the pattern does not.
    private static bool IsSuffixed(Role role, string pattern) => role is Role.Outline or Role.CutOut && !pattern.Contains("{depth}", StringComparison.Ordinal);

    private static string Depth(double? depth) => depth is { } mm ? $"DEEP_{Hundredths(mm)}" : "THRU";

    private static string Hundredths(double mm) => Math.Round(mm * 100, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture);

    private static KeyValuePair<Role, Kind> Of(Role role, string finished, string? path, string title) => new(role, new(finished, path, title));

    private sealed record Kind(string Finished, string? Path, string Title);
}
