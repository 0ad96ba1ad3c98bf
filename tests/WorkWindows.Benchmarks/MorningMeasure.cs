using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using WorkWindows.Engine.Climatology;

namespace WorkWindows.Benchmarks;

/// <summary>
/// Fills a running service, such as a fresh demo, with land and work, and times its pages over all of it:
/// <c>morning ADDRESS MAIL PASSWORD PARCELS TASKS</c>.
/// </summary>
internal sealed partial class MorningMeasure(HttpClient client, int parcels, int tasks)
{
    private const int ParcelsAProperty = 20;
    private const int Warm = 5;
    private const int Timed = 31;

    private static readonly string[] Practices = ["tie-down", "hinge-cut", "overstory-felling", "cleanup", "trail-opening"];

    public static async Task<int> RunAsync(string[] arguments)
    {
        if (arguments is not [var address, var mail, var password, var parcels, var tasks])
        {
            await Console.Error.WriteLineAsync("morning ADDRESS MAIL PASSWORD PARCELS TASKS");
            return 2;
        }
        using var client = new HttpClient { BaseAddress = new(address), Timeout = TimeSpan.FromMinutes(20) };
        var form = await client.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var signIn = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["Email"] = mail,
            ["Password"] = password,
            ["__RequestVerificationToken"] = Token().Match(form).Groups[1].Value,
        });
        (await client.PostAsync(new Uri("/sign-in", UriKind.Relative), signIn)).EnsureSuccessStatusCode();
        await new MorningMeasure(
            client, int.Parse(parcels, CultureInfo.InvariantCulture), int.Parse(tasks, CultureInfo.InvariantCulture)).RunAsync();
        return 0;
    }

    private async Task RunAsync()
    {
        await SendAsync("/api/imports/parcels", "application/geo+json", Land());
        await SendAsync("/api/imports/tasks", "text/csv", Work());
        var since = Stopwatch.GetTimestamp();
        while ((await client.GetStringAsync(new Uri("/morning", UriKind.Relative))).Contains("not looked at", StringComparison.Ordinal))
            await Task.Delay(TimeSpan.FromSeconds(2));
        Console.WriteLine($"all tasks looked at: {Stopwatch.GetElapsedTime(since).TotalSeconds:0} s");
        foreach (var page in new[] { "/morning", "/tasks", "/tasks?sort=closing&state=workable", "/map", "/review" })
            await TimeAsync(page);
    }

    private async Task TimeAsync(string page)
    {
        var times = new List<double>();
        var length = 0;
        for (var round = 0; round < Warm + Timed; round++)
        {
            var since = Stopwatch.GetTimestamp();
            length = (await client.GetByteArrayAsync(new Uri(page, UriKind.Relative))).Length;
            if (round >= Warm)
                times.Add(Stopwatch.GetElapsedTime(since).TotalMilliseconds);
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{page}: median {Quantile.Of(times, 0.5):0} ms, P90 {Quantile.Of(times, 0.9):0} ms, {length / 1024} KiB"));
    }

    private async Task SendAsync(string address, string type, string content)
    {
        using var body = new StringContent(content, Encoding.UTF8, type);
        var since = Stopwatch.GetTimestamp();
        using var answer = await client.PostAsync(new Uri(address, UriKind.Relative), body);
        var said = await answer.Content.ReadAsStringAsync();
        Console.WriteLine($"{address}: {(int)answer.StatusCode}, {Stopwatch.GetElapsedTime(since).TotalSeconds:0.0} s, {said}");
        answer.EnsureSuccessStatusCode();
    }

    private string Land() => $$"""{"type":"FeatureCollection","features":[{{string.Join(",\n", Enumerable.Range(0, parcels).Select(Parcel))}}]}""";

    private static string Parcel(int number)
    {
        var (west, south) = (-85 + number % 50 * 0.02, 42 + number / 50 * 0.02);
        var corners = new[] { (0, 0), (1, 0), (1, 1), (0, 1), (0, 0) }
            .Select(corner => new[] { west + corner.Item1 * 0.005, south + corner.Item2 * 0.004 });
        var property = number / ParcelsAProperty;
        return JsonSerializer.Serialize(new
        {
            type = "Feature",
            properties = new
            {
                property = $"L-{property}",
                propertyName = $"Loaded {property}",
                parcel = $"L-{number}",
                parcelName = $"Parcel {number}",
                state = "MI",
                countyFips = "26065",
            },
            geometry = new { type = "Polygon", coordinates = new[] { corners } },
        });
    }

    private string Work()
    {
        var lines = Enumerable.Range(0, tasks).Select(number =>
            $"L-{number},L-{number % parcels},{Practices[number % Practices.Length]},1,acres,2,,,,");
        return $"task,parcel,practice,quantity,unit,crewSize,deadline,scheduledOn,prerequisites,crewLead\n{string.Join('\n', lines)}\n";
    }

    [GeneratedRegex("name=\"__RequestVerificationToken\"[^>]*value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
