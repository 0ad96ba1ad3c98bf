namespace WorkWindows.Service.Notices;

/// <summary>A notice as plain text, for those who read no HTML.</summary>
public static class NoticeText
{
    public static string Of(Notice notice) => string.Join("\n\n", notice.Blocks.Select(Of)) + "\n";

    private static string Of(Block block) => block switch
    {
        Heading heading => $"{heading.Text}\n{new string('-', heading.Text.Length)}",
        Paragraph paragraph => paragraph.Text,
        Link link => $"{link.Text}\n{link.Address}",
        ItemList list => string.Join("\n", list.Items.Select(Of)),
        _ => throw new ArgumentException($"{block.GetType().Name} has no text."),
    };

    private static string Of(Item item) =>
        item.Source is null ? $"* {item.Text}" : $"* {item.Text}\n  [{item.Source}]";
}
