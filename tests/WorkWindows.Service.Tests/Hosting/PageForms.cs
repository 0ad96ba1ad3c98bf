using System.Text.RegularExpressions;

namespace WorkWindows.Service.Tests.Hosting;

internal static partial class PageForms
{
    /// <summary>Posts a page's form as a browser would, with the token that the page holds.</summary>
    public static async Task<HttpResponseMessage> PostFormAsync(
        this HttpClient client, string page, Dictionary<string, string> fields)
    {
        var html = await client.GetStringAsync(page);
        fields["__RequestVerificationToken"] = Token().Match(html).Groups[1].Value;
        return await client.PostAsync(page, new FormUrlEncodedContent(fields));
    }

    public static Task<HttpResponseMessage> SignInAsync(this HttpClient client, string email, string password) =>
        client.PostFormAsync("/sign-in", new() { ["Email"] = email, ["Password"] = password });

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
