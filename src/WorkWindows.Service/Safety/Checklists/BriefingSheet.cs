using System.Globalization;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Safety;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Safety.CheckIns;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Safety.Checklists;

/// <summary>What stands on the sheet that a crew is briefed from.</summary>
/// <param name="List">The day's checklist.</param>
/// <param name="PropertyId">The property.</param>
/// <param name="Position">Degrees north and east with at most five decimals, and what they are of.</param>
/// <param name="WayIn">How to get there and in, as entered; null when nobody has.</param>
/// <param name="Emergency">Who is called, as entered.</param>
/// <param name="Lead">Name and telephone of the crew lead; null where none is set.</param>
/// <param name="Contacts">Who is called when the crew is not heard from; none without a watch.</param>
/// <param name="Ground">What has been noted of the parcel that is a hazard.</param>
public sealed record BriefingSheet(
    DayChecklist List, Guid PropertyId, string Position, string? WayIn, EmergencyForm Emergency, string? Lead,
    IReadOnlyList<string> Contacts, IReadOnlyList<string> Ground)
{
    private const int FewestRows = 4, MostRows = 10, MostNotes = 240;

    /// <summary>The measures, exceptions and requirements of the day.</summary>
    public IEnumerable<SafetyItem> OnTheDay => List.Checklist.Items.Where(item => item.Kind == SafetyItemKind.Today);

    /// <summary>When to stop and leave.</summary>
    public IEnumerable<SafetyItem> Stops => List.Checklist.Items.Where(item => item.Kind == SafetyItemKind.Stop);

    /// <summary>Lines to sign on: one a head and two for visitors.</summary>
    public int Rows => Math.Clamp(List.Task.CrewSize + 2, FewestRows, MostRows);

    /// <returns>Null when the list's task is gone.</returns>
    internal static async Task<BriefingSheet?> OfAsync(
        DayChecklist list, WorkWindowsDb db, WatchReader watches, CancellationToken cancellation)
    {
        var place = await db.PlannedTasks.AsNoTracking().Where(task => task.Id == list.Task.Id).Select(task => new
        {
            task.Parcel.Latitude,
            task.Parcel.Longitude,
            HasBoundary = task.Parcel.BoundaryGeoJson != null,
            task.Parcel.Property,
            Phone = task.CrewLead == null ? null : task.CrewLead.PhoneNumber,
        }).SingleOrDefaultAsync(cancellation);
        if (place is null)
            return null;
        var watch = list.Day == list.Today ? await watches.OpenAsync(list.Task.Id, cancellation) : null;
        return new(
            list, place.Property.Id,
            $"{Degrees(place.Latitude)}, {Degrees(place.Longitude)} "
            + (place.HasBoundary ? "(a point inside the parcel's boundary)" : "(the parcel's point as entered)"),
            place.Property.AccessNotes, EmergencyForm.Of(place.Property),
            list.LeadName is null ? null : place.Phone is null ? list.LeadName : $"{list.LeadName}, {place.Phone}",
            [.. watch?.Contacts.Select(contact => $"{contact.Name}, {contact.Email}") ?? []],
            [.. list.Evaluation.Facts.SiteFlags.Select(Words).OfType<string>()]);
    }

    /// <summary>The way in, cut to fit: the sheet is one page, whatever was entered.</summary>
    public string? AccessNotes => WayIn is { Length: > MostNotes }
        ? $"{WayIn[..MostNotes].TrimEnd()} … (more in the notes of the property)"
        : WayIn;

    /// <summary>About a metre, and no digit that was not given.</summary>
    private static string Degrees(double value) => value.ToString("0.#####", CultureInfo.InvariantCulture);

    private static string? Words(SiteFlag flag) => flag switch
    {
        SiteFlag.WetGround => "wet ground",
        SiteFlag.SteepSlope => "steep slope",
        SiteFlag.PowerLine => "power line within reach of the trees",
        SiteFlag.PublicHunting => "open to public hunting",
        _ => null,
    };
}
