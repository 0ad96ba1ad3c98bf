using System.Collections.Immutable;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime.TimeZones;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Notices.Calendars;

namespace WorkWindows.Service.Notices.Choices;

/// <summary>Where everybody chooses what they are told, and how. It needs no scripts.</summary>
public sealed class ChoicesModel(ChoiceHandler choices, CalendarFeed feed, Caller caller) : PageModel
{
    public static ImmutableArray<string> Ways { get; } = ["mail", "webhook", "calendar"];

    /// <summary>The zones of the United States, by the table of the time zone database.</summary>
    public static ImmutableArray<string> Zones { get; } =
    [
        .. TzdbDateTimeZoneSource.Default.ZoneLocations!.Where(place => place.CountryCode == "US")
            .Select(place => place.ZoneId).Order(StringComparer.Ordinal),
    ];

    public ChoiceView View { get; private set; } = null!;

    public bool IsSaved { get; private set; }

    /// <summary>What requests to a new address are signed with; shown once.</summary>
    public string? Secret { get; private set; }

    /// <summary>The address of a new calendar feed; shown once.</summary>
    public string? CalendarAddress { get; private set; }

    [BindProperty]
    public ChoiceEntry Entry { get; set; } = new();

    public Task<IActionResult> OnGetAsync(CancellationToken cancellation) => ShowAsync(cancellation);

    public async Task<IActionResult> OnPostAsync(CancellationToken cancellation)
    {
        if (caller.PersonId is not { } person || await choices.ReadAsync(person, cancellation) is not { } before)
            return NotFound();
        var change = await choices.SaveAsync(person, Entry.Form(before.Kinds), cancellation);
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        (IsSaved, Secret) = (change.Outcome == ChangeOutcome.Done, change.Value?.WebhookSecret);
        // What was typed stays.
        View = change.Value ?? Entry.On(before);
        return Page();
    }

    public async Task<IActionResult> OnPostCalendarAsync(CancellationToken cancellation)
    {
        if (caller.PersonId is { } person && await choices.NewCalendarAsync(person, cancellation) is { } key)
            CalendarAddress = feed.AddressOf(caller.OrganizationId, key, Request);
        return await ShowAsync(cancellation);
    }

    public async Task<IActionResult> OnPostEndCalendarAsync(CancellationToken cancellation)
    {
        if (caller.PersonId is { } person)
            await choices.EndCalendarAsync(person, cancellation);
        return await ShowAsync(cancellation);
    }

    private async Task<IActionResult> ShowAsync(CancellationToken cancellation)
    {
        if (caller.PersonId is not { } person || await choices.ReadAsync(person, cancellation) is not { } view)
            return NotFound();
        View = view;
        return Page();
    }
}

/// <summary>Choices as the page's form enters them.</summary>
public sealed class ChoiceEntry
{
    public string? TimeZone { get; set; }
    public string? Temperatures { get; set; }
    public string? Areas { get; set; }
    public string? QuietFrom { get; set; }
    public string? QuietUntil { get; set; }
    public string? WebhookAddress { get; set; }

    /// <summary>The boxes that are ticked, such as 'reminder:mail'.</summary>
    public List<string?> Way { get; set; } = [];

    internal ChoiceForm Form(IEnumerable<KindView> kinds) => new(
        Given(TimeZone), Temperatures, Given(QuietFrom), Given(QuietUntil), Given(WebhookAddress),
        kinds.Where(kind => kind.MayBeTurnedOff).ToDictionary(kind => kind.Kind, kind => Ticked(kind.Kind)),
        Areas);

    internal ChoiceView On(ChoiceView before) => before with
    {
        TimeZone = TimeZone,
        Temperatures = Temperatures ?? before.Temperatures,
        Areas = Areas ?? before.Areas,
        QuietFrom = QuietFrom,
        QuietUntil = QuietUntil,
        WebhookAddress = WebhookAddress,
        Kinds = [.. before.Kinds.Select(kind => kind.MayBeTurnedOff ? kind with { Ways = Ticked(kind.Kind) } : kind)],
    };

    private IReadOnlyList<string> Ticked(string kind) =>
    [
        .. Way.OfType<string>().Where(box => box.StartsWith($"{kind}:", StringComparison.Ordinal))
            .Select(box => box[(kind.Length + 1)..]),
    ];

    private static string? Given(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
