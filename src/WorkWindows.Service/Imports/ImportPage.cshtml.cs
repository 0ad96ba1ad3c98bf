using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Feeds;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Imports;

/// <summary>Where a consultant hands in a file of land or work, and sees what it would change before it does.</summary>
[Authorize(Access.Plan)]
[RequestFormLimits(ValueLengthLimit = MostCharacters, MultipartBodyLengthLimit = MostCharacters)]
[RequestSizeLimit(MostCharacters)]
public sealed class ImportPageModel(ParcelImportHandler parcels, TaskImportHandler tasks) : PageModel
{
    /// <summary>Rows of a preview that are shown; all of them are counted.</summary>
    public const int MostShown = 200;

    private const int LimitMegabytes = 10;

    /// <summary>A file of the largest size as text, and the form around it.</summary>
    private const int MostCharacters = 14 * 1024 * 1024;

    /// <summary>The file as it was handed in, so that it need not be chosen again; null before.</summary>
    public string? Handed { get; private set; }

    public string? FileName { get; private set; }

    public IReadOnlyList<RowChange> Changes { get; private set; } = [];

    public FaultReport Faults { get; private set; } = FaultReport.None;

    /// <summary>What the file would do or has done, in a sentence.</summary>
    public string? Says { get; private set; }

    public string? Refused { get; private set; }

    public bool IsStored { get; private set; }

    public async Task OnPostAsync(string? content, string? fileName, CancellationToken cancellation)
    {
        (Handed, FileName) = (content, fileName);
        if (Request.Form.Files is [var file])
        {
            var (read, problem) = await HandedInFile.ReadAsync(Request, LimitMegabytes, cancellation);
            if (read is null)
            {
                Refused = $"{problem!.ProblemDetails.Title} {problem.ProblemDetails.Detail}";
                return;
            }
            (Handed, FileName) = (Convert.ToBase64String(read.ToArray()), file.FileName);
        }
        if (string.IsNullOrEmpty(Handed))
        {
            Refused = "Choose a file: parcels as GeoJSON, or tasks as CSV.";
            return;
        }
        IsStored = Request.Form.ContainsKey("store") && Request.Form.Files.Count == 0;
        var bytes = new byte[Handed.Length];
        if (!Convert.TryFromBase64String(Handed, bytes, out var length))
        {
            (Handed, Refused, IsStored) = (null, "The file did not arrive whole: choose it again.", false);
            return;
        }
        // GeoJSON is an object; a file of tasks begins with the names of its columns.
        var first = bytes.AsSpan(0, length).TrimStart([.. " \t\r\n\uFEFF"u8]);
        await ReadAsync(new(bytes, 0, length), !first.IsEmpty && first[0] == '{', cancellation);
    }

    private async Task ReadAsync(MemoryStream file, bool isLand, CancellationToken cancellation)
    {
        if (isLand)
        {
            var outcome = await (IsStored ? parcels.ImportAsync(file, cancellation) : parcels.PreviewAsync(file, cancellation));
            (Changes, Faults) = (outcome.Changes, outcome.Faults);
            if (outcome.Stored is { } counts)
                Says = $"Properties: {Of(counts.Properties)}. Parcels: {Of(counts.Parcels)}.";
        }
        else
        {
            var outcome = await (IsStored ? tasks.ImportAsync(file, cancellation) : tasks.PreviewAsync(file, cancellation));
            (Changes, Faults) = (outcome.Changes, outcome.Faults);
            if (outcome.Stored is { } counts)
                Says = $"Tasks: {Of(counts)}.";
        }
        IsStored = IsStored && Says is not null;
    }

    private static string Of(ImportCounts counts) =>
        $"{counts.Created} new, {counts.Updated} changed, {counts.Unchanged} as they are";

    /// <summary>How many faults there are, those that are not listed included.</summary>
    public string FaultCount => DayWords.Count(Faults.Faults.Length + Faults.More, "fault", "faults");
}
