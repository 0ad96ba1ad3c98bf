using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.RepresentationModel;

namespace WorkWindows.Engine.Rules.Reading;

/// <summary>A node of the file with the key it stands under, and the list that its faults go to.</summary>
internal sealed partial record Entry(YamlNode Node, string Key, List<PackFault> Faults)
{
    /// <summary>What faults call the whole document.</summary>
    public const string RootKey = "file";

    public string? Text => (Node as YamlScalarNode)?.Value;

    public void Refuse(string accepted) =>
        Faults.Add(new(Node.Start.Line, Node.Start.Column, Key.Length == 0 ? RootKey : Key, Shown(Node), accepted));

    /// <summary>Refuses a word that is none of those accepted.</summary>
    public void RefuseWord(IEnumerable<string> accepted) => Refuse(NearWords.ListWithNearest(Text, accepted));

    /// <summary>The entries of a mapping, after refusing keys that are not among the known ones.</summary>
    public Mapping? AsMapping(params string[] known)
    {
        if (Node is not YamlMappingNode mapping)
        {
            Refuse($"a mapping with the keys {string.Join(", ", known)}");
            return null;
        }
        foreach (var key in mapping.Children.Keys)
        {
            if (key is not YamlScalarNode { Value: { } name } || !known.Contains(name))
            {
                Faults.Add(new(key.Start.Line, key.Start.Column, Key.Length == 0 ? "key" : $"{Key} key", Shown(key),
                    NearWords.ListWithNearest((key as YamlScalarNode)?.Value, known)));
            }
        }
        return new(this, mapping);
    }

    public IEnumerable<Entry> Items()
    {
        if (Node is YamlSequenceNode { Children.Count: > 0 } sequence)
            return sequence.Children.Select((item, index) => this with { Node = item, Key = $"{Key}[{index}]" });
        Refuse("a list with at least one item"
            + (string.IsNullOrEmpty(Text) ? ": each after a hyphen, or all in brackets" : $", such as [{Text}]"));
        return [];
    }

    public string? Sentence()
    {
        if (!string.IsNullOrWhiteSpace(Text))
            return Text;
        Refuse("a text that is not empty");
        return null;
    }

    /// <summary>A key for machines; null with a fault when it has another form.</summary>
    public string? MachineKey()
    {
        if (Text is { } text && KeyForm().IsMatch(text))
            return text;
        Refuse("lower-case letters, digits, hyphens and dots, such as oak-wilt.high-risk");
        return null;
    }

    public int? Integer(int min, int max)
    {
        if (int.TryParse(Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && value >= min && value <= max)
        {
            return value;
        }
        Refuse($"a whole number from {min} to {max}");
        return null;
    }

    /// <summary>One of a closed list of words; null with a fault when it is none of them.</summary>
    public T? OneOf<T>(IReadOnlyDictionary<string, T> words)
        where T : struct
    {
        if (Text is { } text && words.TryGetValue(text, out var value))
            return value;
        RefuseWord(words.Keys);
        return null;
    }

    [GeneratedRegex("^[a-z0-9]+([.-][a-z0-9]+)*$")]
    private static partial Regex KeyForm();

    private static string Shown(YamlNode node) => node switch
    {
        YamlScalarNode scalar => scalar.Value ?? "",
        YamlSequenceNode { Children.Count: 0 } => "an empty list",
        YamlSequenceNode { Children.Count: 1 } => "a list of 1 item",
        YamlSequenceNode list => $"a list of {list.Children.Count} items",
        YamlMappingNode { Children.Count: > 0 } mapping => $"a mapping of {string.Join(", ", mapping.Children.Keys)}",
        _ => "an empty mapping",
    };
}

/// <summary>A mapping of the file whose keys have been checked.</summary>
internal sealed class Mapping(Entry entry, YamlMappingNode node)
{
    public Entry Entry => entry;

    public bool IsEmpty => node.Children.Count == 0;

    public Entry? this[string key] => node.Children.TryGetValue(new YamlScalarNode(key), out var value)
        ? entry with { Node = value, Key = entry.Key.Length == 0 ? key : $"{entry.Key}.{key}" }
        : null;

    public bool Has(string key) => node.Children.ContainsKey(new YamlScalarNode(key));

    public Entry? Required(string key, string accepted)
    {
        if (this[key] is { } found)
            return found;
        var start = node.Start;
        var name = entry.Key.Length == 0 ? key : $"{entry.Key}.{key}";
        entry.Faults.Add(new(start.Line, start.Column, name, null, accepted));
        return null;
    }
}
