using System.Collections.Immutable;

namespace WorkWindows.Service.Notices;

/// <summary>What a mail says, once: its text and its HTML are both rendered from this.</summary>
public sealed record Notice(string Subject, ImmutableArray<Block> Blocks);

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
