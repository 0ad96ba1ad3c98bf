using System.Text.RegularExpressions;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;

namespace WorkWindows.Service.Help;

/// <summary>A text of docs/ as a page.</summary>
/// <param name="Title">Its first heading.</param>
/// <param name="Html">The whole of it.</param>
public sealed partial record Manual(string Title, string Html)
{
    private const string Folder = "docs/";

    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .UsePipeTables().UseAutoIdentifiers(AutoIdentifierOptions.GitHub).DisableHtml().Build();

    /// <param name="path">A path within docs/, as in 'rules/hours.md'.</param>
    /// <returns>Null where there is no such file.</returns>
    public static Stream? Open(string path) => typeof(Manual).Assembly.GetManifestResourceStream(Folder + path);

    public static Manual Read(Stream markdown)
    {
        using var reader = new StreamReader(markdown);
        var text = reader.ReadToEnd();
        return new(
            Heading().Match(text).Groups[1].Value.Trim(),
            // What is wider than a phone is moved by itself, by keys too.
            Markdown.ToHtml(text, Pipeline)
                .Replace("<table>", "<div class=\"scroll\" tabindex=\"0\" role=\"group\" aria-label=\"Table\"><table>", StringComparison.Ordinal)
                .Replace("</table>", "</table></div>", StringComparison.Ordinal)
                .Replace("<pre>", "<pre tabindex=\"0\">", StringComparison.Ordinal));
    }

    [GeneratedRegex("^# (.+)$", RegexOptions.Multiline)]
    private static partial Regex Heading();
}
