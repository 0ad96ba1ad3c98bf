namespace WorkWindows.Service.Notices.Templates;

/// <summary>
/// Reads what a filled template says. The first line is the subject. A line that begins with '# ' is a heading, one
/// with '* ' an item, '  [source]' the source of the item above it, '=> address' a link that the paragraph above it
/// speaks of; all other lines up to an empty one are a paragraph.
/// </summary>
internal static class NoticeDocument
{
    private const string HeadingMark = "# ";
    private const string ItemMark = "* ";
    private const string SourceMark = "  [";
    private const string LinkMark = "=> ";

    public static Notice Read(string text)
    {
        var lines = text.Split('\n').Select(line => line.TrimEnd()).SkipWhile(line => line == "").ToList();
        var blocks = new List<Block>();
        var isInParagraph = false;
        foreach (var line in lines.Skip(1))
        {
            var continues = isInParagraph;
            isInParagraph = false;
            if (line == "")
                continue;
            if (line.StartsWith(HeadingMark, StringComparison.Ordinal))
                blocks.Add(new Heading(line[HeadingMark.Length..]));
            else if (line.StartsWith(ItemMark, StringComparison.Ordinal))
                AddItem(blocks, new(line[ItemMark.Length..]));
            else if (line.StartsWith(SourceMark, StringComparison.Ordinal))
                AddSource(blocks, line[SourceMark.Length..^1]);
            else if (line.StartsWith(LinkMark, StringComparison.Ordinal))
                blocks[^1] = new Link(((Paragraph)blocks[^1]).Text, line[LinkMark.Length..]);
            else
            {
                AddText(blocks, line.Trim(), continues);
                isInParagraph = true;
            }
        }
        return new(lines[0], [.. blocks]);
    }

    private static void AddItem(List<Block> blocks, Item item)
    {
        if (blocks is [.., ItemList list])
            blocks[^1] = new ItemList(list.Items.Add(item));
        else
            blocks.Add(new ItemList([item]));
    }

    private static void AddSource(List<Block> blocks, string source)
    {
        var items = ((ItemList)blocks[^1]).Items;
        blocks[^1] = new ItemList(items.SetItem(items.Length - 1, items[^1] with { Source = source }));
    }

    private static void AddText(List<Block> blocks, string text, bool continues)
    {
        if (continues && blocks is [.., Paragraph paragraph])
            blocks[^1] = new Paragraph($"{paragraph.Text} {text}");
        else
            blocks.Add(new Paragraph(text));
    }
}
