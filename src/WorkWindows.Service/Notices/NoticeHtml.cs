using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace WorkWindows.Service.Notices;

/// <summary>A notice as HTML that reads on a phone: one column, inline styles, nothing fetched.</summary>
public static class NoticeHtml
{
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    public static string Of(Notice notice) => $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <title>{Encode(notice.Subject)}</title>
        </head>
        <body style="margin:0 auto; padding:16px; max-width:40em; font:16px/1.5 sans-serif; color:#1b1b1b">
        {string.Join("\n", notice.Blocks.Select(Of))}
        </body>
        </html>

        """;

    private static string Of(Block block) => block switch
    {
        Heading heading => $"""<h2 style="margin:24px 0 8px; font-size:18px">{Encode(heading.Text)}</h2>""",
        Paragraph paragraph => $"""<p style="margin:0 0 12px">{Encode(paragraph.Text)}</p>""",
        Link link => $"""
            <p style="margin:0 0 12px">{Encode(link.Text)}<br>{Anchor(link.Address)}</p>
            """,
        ItemList list => $"""
            <ul style="margin:0 0 12px; padding-left:20px">
            {string.Join("\n", list.Items.Select(Of))}
            </ul>
            """,
        _ => throw new ArgumentException($"{block.GetType().Name} has no HTML."),
    };

    private static string Anchor(string address) => $"""<a href="{Encode(address)}">{Encode(address)}</a>""";

    private static string Of(Item item) => item.Source is null
        ? $"<li>{Encode(item.Text)}</li>"
        : $"""<li>{Encode(item.Text)}<br><small style="color:#555">{Encode(item.Source)}</small></li>""";

    private static string Encode(string text) => Encoder.Encode(text);
}
