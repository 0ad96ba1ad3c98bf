using System.Net;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Shouldly;

namespace WorkWindows.Service.Tests.Hosting;

/// <summary>The API as tests use it: every answer is checked and given as JSON.</summary>
internal static class Api
{
    public static Task<JsonElement> ReadAsync(this HttpClient client, string address) =>
        AnswerAsync(client.GetAsync(address), HttpStatusCode.OK);

    public static Task<JsonElement> CreateAsync(this HttpClient client, string address, object body) =>
        AnswerAsync(client.PostAsJsonAsync(address, body), HttpStatusCode.Created);

    public static Task<JsonElement> PostOkAsync(this HttpClient client, string address, object body) =>
        AnswerAsync(client.PostAsJsonAsync(address, body), HttpStatusCode.OK);

    public static Task<JsonElement> PutAsync(this HttpClient client, string address, object body) =>
        AnswerAsync(client.PutAsJsonAsync(address, body), HttpStatusCode.OK);

    public static async Task<JsonElement> RefusedAsync(
        this HttpClient client, HttpMethod method, string address, object? body, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(method, address);
        request.Content = body is null ? null : JsonContent.Create(body);
        return await AnswerAsync(client.SendAsync(request), status);
    }

    public static Task<JsonElement> ImportAsync(
        this HttpClient client, string address, string file, HttpStatusCode status = HttpStatusCode.OK) =>
        ImportAsync(client, address, Encoding.UTF8.GetBytes(file), status);

    public static Task<JsonElement> ImportAsync(
        this HttpClient client, string address, byte[] file, HttpStatusCode status = HttpStatusCode.OK) =>
        AnswerAsync(client.PostAsync(address, new ByteArrayContent(file)), status);

    public static Guid Id(this JsonElement row) => row.GetProperty("id").GetGuid();

    public static string Text(this JsonElement row, string field) => row.GetProperty(field).ToString();

    /// <summary>The accepted forms that a validation problem names for a field.</summary>
    public static string Error(this JsonElement problem, string field) =>
        string.Join(' ', problem.GetProperty("errors").GetProperty(field).EnumerateArray());

    /// <summary>'line item field value' of each fault of a refused file.</summary>
    public static string[] Faults(this JsonElement problem) =>
    [
        .. problem.GetProperty("faults").EnumerateArray().Select(fault =>
            $"{fault.Text("line")} {fault.Text("item")} {fault.Text("field")} {fault.Text("value")}"),
    ];

    private static async Task<JsonElement> AnswerAsync(Task<HttpResponseMessage> sent, HttpStatusCode status)
    {
        using var answer = await sent;
        var body = await answer.Content.ReadAsStringAsync();
        answer.StatusCode.ShouldBe(status, body);
        if ((int)status >= 400)
            answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/problem+json");
        return body.Length == 0 ? default : JsonSerializer.Deserialize<JsonElement>(body);
    }
}
