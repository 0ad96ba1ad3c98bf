using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Options;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Morning;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Maps;

/// <summary>The land that the caller may see, with what may be done on a day.</summary>
[Authorize]
public sealed class MapPageModel(
    OutlookReader outlooks, VisibleProperties visible, WeekHandler week, Caller caller, ReaderUnits units, IOptions<MapOptions> options, IClock clock)
    : PageModel
{
    /// <summary>The property that is shown alone; null for all.</summary>
    [BindProperty(SupportsGet = true, Name = "property")]
    public Guid? Property { get; set; }

    /// <summary>ISO; today where it is none of the coming days.</summary>
    [BindProperty(SupportsGet = true, Name = "day")]
    public string? DayText { get; set; }

    /// <summary>What is shown, as a frame writes itself; all land where it is nothing of the kind.</summary>
    [BindProperty(SupportsGet = true, Name = "at")]
    public string? At { get; set; }

    public MapView View { get; private set; } = null!;

    public GroundView Ground { get; private set; } = null!;

    public LocalDate Today { get; private set; }

    public LocalDate Day { get; private set; }

    public IReadOnlyList<(Guid Id, string Name)> Properties { get; private set; } = [];

    public bool MayPlan => caller.Role == Role.Consultant;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        Today = await week.TodayAsync(cancellation);
        Day = AskedDays.Coming(DayText, Today);
        var parcels = await visible.All.AsNoTracking().SelectMany(property => property.Parcels, (property, parcel) => new MappedParcel(
            parcel.Id, parcel.Name, property.Id, property.Name, parcel.Latitude, parcel.Longitude, parcel.BoundaryGeoJson))
            .ToListAsync(cancellation);
        parcels = [.. parcels.OrderBy(parcel => parcel.Property, StringComparer.OrdinalIgnoreCase)
            .ThenBy(parcel => parcel.Name, StringComparer.OrdinalIgnoreCase).ThenBy(parcel => parcel.Id)];
        Properties = [.. parcels.Select(parcel => (parcel.PropertyId, parcel.Property)).Distinct()];
        var meant = Property is { } only ? parcels.FindAll(parcel => parcel.PropertyId == only) : parcels;
        var frame = MapFrame.Parse(At) ?? MapFrame.Around([.. meant.SelectMany(ParcelShape.Corners)]);
        View = MapView.Of(frame, parcels, await outlooks.ReadAsync(cancellation), Day, clock.GetCurrentInstant());
        Ground = new(frame, options.Value, (await units.ReadAsync()).Areas);
    }

    /// <summary>The same map of another day or frame.</summary>
    public string AddressOf(LocalDate day, MapFrame? at, Guid? property = null) =>
        $"/map{QueryString.Create(new Dictionary<string, string?>
        {
            ["property"] = (property ?? Property) is { } id && at is null ? $"{id}" : null,
            ["day"] = day == Today ? null : $"{day:uuuu-MM-dd}",
            ["at"] = at?.ToString(),
        }.Where(one => one.Value is not null))}";

    /// <summary>As in 'open, 2 of 3 may be done'.</summary>
    public static string Says(MapMark mark) => mark.State is { } state
        ? $"{Wording.Of(state)}, {mark.Workable} of {DayWords.Count(mark.Tasks, "task", "tasks")} may be done"
        : "no work due";
}
