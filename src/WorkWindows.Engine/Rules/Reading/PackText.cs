using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using YamlDotNet.RepresentationModel;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Reads the one YAML document of a file.</summary>
internal static class PackText
{
    private const int ShownLetters = 80;
    private const string OpenBracket = "expected ','";
    private const string Reference = "reference";
    private const string TooDeep = "too deep";

    /// <summary>What the library says of a slip, and what a person who made it has to write.</summary>
    private static readonly (string Says, string Accepted)[] Causes =
    [
        ("Duplicate key", "each key once"),
        ("invalid mapping", "a key in line with those beside it, and in quotes a text that has a colon in it"),
        ("quoted scalar", "a text with a quote at its end as at its beginning"),
        (OpenBracket, "a bracket that closes before the next key"),
        ("expected '-' indicator", "a key in line with those beside it"),
        ("expected key", "a key in line with those beside it, a colon and a space"),
        ("cannot start any token", "in quotes a text that begins with a sign"),
        ("unsupported type", "a key, a colon, a space and a value"),
        (Reference, "the text itself, in quotes if it begins with an asterisk: no references"),
        (TooDeep, "fewer levels"),
    ];

    /// <summary>The document's root; null with a fault when the text is not one well-formed document.</summary>
    public static Entry? Root(string text, List<PackFault> faults)
    {
        var scanner = new Scanner(new StringReader(text));
        try
        {
            var stream = new YamlStream();
            stream.Load(new GuardedParser(new Parser(scanner)));
            if (stream.Documents is [var document])
                return new(document.RootNode, "", faults);
            var found = stream.Documents.Count == 0 ? "empty" : $"{stream.Documents.Count} documents";
            faults.Add(new(1, 1, Entry.RootKey, found, "one YAML document"));
        }
        catch (YamlException e)
        {
            faults.Add(Fault(text, e.Start.Line, e.Start.Column, e.Message));
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            // The library throws the first where a bracket is left open before another key, the second where a sign
            // such as | or > has no text under it.
            faults.Add(Fault(text, scanner.CurrentPosition.Line, scanner.CurrentPosition.Column,
                e is InvalidOperationException ? OpenBracket : e.Message));
        }
        return null;
    }

    private static PackFault Fault(string text, long line, long column, string message)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        var tabbed = Array.FindIndex(lines, content => content[..^content.TrimStart().Length].Contains('\t'));
        if (tabbed >= 0)
        {
            return new(tabbed + 1, lines[tabbed].IndexOf('\t') + 1, "text", Shortened(lines[tabbed].Trim()),
                "spaces for indentation, no tab");
        }
        // An end of the file that came too early lies behind the last line.
        line = Math.Clamp(line, 1, lines.Length);
        var accepted = Causes.FirstOrDefault(cause => message.Contains(cause.Says, StringComparison.Ordinal)).Accepted;
        return new(
            line, column, "text", Shortened(lines[line - 1].Trim()), accepted ?? $"well-formed YAML ({message})");
    }

    private static string Shortened(string line) => line.Length <= ShownLetters ? line : $"{line[..ShownLetters]}...";

    /// <summary>
    /// Passes on what a parser reads. Copies and references are refused, because a node can then contain itself, and
    /// so is a depth that no condition needs, because the readers call themselves at each level.
    /// </summary>
    private sealed class GuardedParser(IParser parser) : IParser
    {
        private const int DeepestLevel = 40;

        private int level;

        public ParsingEvent? Current => parser.Current;

        public bool MoveNext()
        {
            var moved = parser.MoveNext();
            if (Current is AnchorAlias alias)
                throw new YamlException(alias.Start, alias.End, Reference);
            level += moved ? Current!.NestingIncrease : 0;
            if (level > DeepestLevel)
                throw new YamlException(Current!.Start, Current.End, TooDeep);
            return moved;
        }
    }
}
