using ShopDrawings.Kernel;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace ShopDrawings.Yaml;

/// <summary>
/// Reads one YAML document into nodes with exact places, from the parser's event stream. Refuses what a project file has no use for:
/// anchors, aliases, tags, further documents, keys that are not plain texts, keys given twice, and more than its limits of size and depth.
/// </summary>
internal sealed class YamlReader
{
    /// <summary>Longest text in characters.</summary>
    public const int LargestText = 1 << 20;

    /// <summary>Deepest nesting. The parser's time grows with the square of the depth.</summary>
    public const int DeepestNesting = 32;

    private readonly string file;
    private readonly string firstLine;
    private readonly Parser parser;
    private readonly List<Diagnostic> diagnostics;

    private YamlReader(string text, string file, string firstLine, List<Diagnostic> diagnostics)
    {
        this.file = file;
        this.firstLine = firstLine;
        this.diagnostics = diagnostics;
        parser = new Parser(new StringReader(text));
    }

    /// <summary>The document's root, or nothing where the text is not sound; every fault is added to the diagnostics.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">Its name.</param>
    /// <param name="firstLine">What such a file may begin with, for whoever gave an empty one.</param>
    /// <param name="diagnostics">Where faults go.</param>
    public static YamlNode? Read(string text, string file, string firstLine, List<Diagnostic> diagnostics)
    {
        if (text.Length > LargestText)
        {
            diagnostics.Add(new(new SourceSpan(file, 1, 1), $"the file has {text.Length} characters; at most {LargestText} are read"));
            return null;
        }

        text = text.TrimStart('\uFEFF');
        if (YamlFaults.Unreadable(text, file) is { } unreadable)
        {
            diagnostics.Add(unreadable);
            return null;
        }

        var reader = new YamlReader(text, file, firstLine, diagnostics);
        try
        {
            return reader.Document();
        }
        catch (Refused refused)
        {
            diagnostics.Add(new(refused.At, refused.Message));
        }
        catch (YamlException fault)
        {
            diagnostics.Add(YamlFaults.Explain(text, file, (int)fault.Start.Line, (int)fault.Start.Column, Plain(fault)));
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // The parser's own slips, on some unclosed brackets and odd tags.
            diagnostics.Add(YamlFaults.Explain(text, file, 1, 1, fault.Message.ReplaceLineEndings(" ")));
        }

        return null;
    }

    private YamlNode? Document()
    {
        parser.MoveNext();
        parser.MoveNext();
        if (parser.Current is StreamEnd)
            return Empty();
        parser.MoveNext();
        var root = Node(1);
        if (root is YamlScalar { IsEmpty: true }) return Empty();
        parser.MoveNext();
        if (parser.Current is not StreamEnd)
            throw new Refused(Place(parser.Current!.Start), "a second document starts here; a file is one document, without a “---” line inside");
        return root;
    }

    private YamlNode? Empty()
    {
        diagnostics.Add(new(new SourceSpan(file, 1, 1), $"the file is empty; it starts with a line such as “{firstLine}”"));
        return null;
    }

    private YamlNode Node(int depth)
    {
        var current = parser.Current!;
        var at = Place(current.Start);
        if (depth > DeepestNesting) throw new Refused(at, $"this is nested deeper than {DeepestNesting} levels, which no project needs");
        if (current is AnchorAlias) throw new Refused(at, "aliases (*name) are not allowed; write the value again");
        if (current is NodeEvent node)
        {
            if (!node.Anchor.IsEmpty) throw new Refused(at, "anchors (&name) are not allowed; write the value where it is needed");
            if (!node.Tag.IsEmpty) throw new Refused(at, "tags (!name) are not allowed; write the value alone");
        }

        switch (current)
        {
            case Scalar scalar:
                parser.MoveNext();
                return new YamlScalar(at, scalar.Value, scalar.Style != ScalarStyle.Plain);
            case SequenceStart:
                parser.MoveNext();
                var items = new List<YamlNode>();
                while (parser.Current is not SequenceEnd) items.Add(Node(depth + 1));
                parser.MoveNext();
                return new YamlSequence(at, items);
            case MappingStart:
                parser.MoveNext();
                return Mapping(at, depth);
            default:
                throw new Refused(at, "a value is missing here");
        }
    }

    private YamlMapping Mapping(SourceSpan at, int depth)
    {
        var entries = new List<(YamlScalar, YamlNode)>();
        var seen = new Dictionary<string, SourceSpan>(StringComparer.Ordinal);
        while (parser.Current is not MappingEnd)
        {
            var place = Place(parser.Current!.Start);
            if (Node(depth + 1) is not YamlScalar { Text.Length: > 0 } key) throw new Refused(place, "a key must be a plain word");
            var value = Node(depth + 1);
            if (seen.TryAdd(key.Text, key.At)) entries.Add((key, value));
            else diagnostics.Add(new(key.At, $"the key “{key.Text}” was given already in line {seen[key.Text].Line}; keep one of them"));
        }

        parser.MoveNext();
        return new YamlMapping(at, entries);
    }

    private SourceSpan Place(YamlDotNet.Core.Mark mark) => new(file, (int)Math.Min(Math.Max(mark.Line, 1), int.MaxValue), (int)Math.Min(Math.Max(mark.Column, 1), int.MaxValue));

    // The parser's message without its own coordinates; a line break in it would break ours.
    private static string Plain(YamlException fault)
    {
        var text = fault.Message.ReplaceLineEndings(" ");
        var end = text.StartsWith('(') ? text.IndexOf("): ", StringComparison.Ordinal) : -1;
        text = end < 0 ? text : text[(end + 3)..];
        return text.TrimEnd('.') is { Length: > 0 } t ? char.ToLowerInvariant(t[0]) + t[1..] : "it ends too early";
    }

    private sealed class Refused(SourceSpan at, string message) : Exception(message)
    {
        public SourceSpan At { get; } = at;
    }
}
