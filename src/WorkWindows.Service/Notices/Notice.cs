using System.Collections.Immutable;
using WorkWindows.Engine.Rules;

namespace WorkWindows.Service.Notices;

/// <summary>What a mail says, once: its text and its HTML are both rendered from this.</summary>
public sealed record Notice(string Subject, ImmutableArray<Block> Blocks)
{
    /// <summary>The same in the reader's scale of temperature. Sources stay as their documents have them.</summary>
    public Notice In(TemperatureScale scale) => scale == TemperatureScale.Fahrenheit
        ? this
        : this with { Blocks = [.. Blocks.Select(block => In(block, scale))] };

    private static Block In(Block block, TemperatureScale scale) => block switch
    {
        Heading heading => new Heading(TemperatureWords.In(heading.Text, scale)),
        Paragraph paragraph => new Paragraph(TemperatureWords.In(paragraph.Text, scale)),
        Link link => link with { Text = TemperatureWords.In(link.Text, scale) },
        ItemList list => new ItemList(
            [.. list.Items.Select(item => item with { Text = TemperatureWords.In(item.Text, scale) })]),
        _ => throw new ArgumentException($"{block.GetType().Name} has no text."),
    };
}

public abstract record Block;

public sealed record Heading(string Text) : Block;

public sealed record Paragraph(string Text) : Block;

/// <summary>A sentence and the address that it speaks of, which both forms of the mail write out.</summary>
public sealed record Link(string Text, string Address) : Block;

public sealed record ItemList(ImmutableArray<Item> Items) : Block;

/// <summary>One line of a list.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Source">Where that is stated, or null.</param>
public sealed record Item(string Text, string? Source = null);
