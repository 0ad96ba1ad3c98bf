using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.WebUtilities;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Review;

public sealed class ReviewModel(ReviewList list, IClock clock) : PageModel
{
    private const int UsualDays = 90;

    public static IReadOnlyList<DayState> States { get; } = Enum.GetValues<DayState>();

    public ReviewListView View { get; private set; } = null!;

    public DaySpan Days { get; private set; }

    /// <summary>What is wrong with the period that was asked for.</summary>
    public IReadOnlyList<string> Faults { get; private set; } = [];

    [BindProperty(SupportsGet = true, Name = "property")]
    public Guid? Property { get; set; }

    [BindProperty(SupportsGet = true, Name = "from")]
    public string? From { get; set; }

    [BindProperty(SupportsGet = true, Name = "to")]
    public string? To { get; set; }

    [BindProperty(SupportsGet = true, Name = "rule")]
    public string? Rule { get; set; }

    [BindProperty(SupportsGet = true, Name = "state")]
    public string? State { get; set; }

    [BindProperty(SupportsGet = true, Name = "person")]
    public Guid? Person { get; set; }

    [BindProperty(SupportsGet = true, Name = "at")]
    public int At { get; set; } = 1;

    public async Task OnGetAsync(CancellationToken cancellation)
    {
        var today = clock.GetCurrentInstant().InUtc().Date;
        var usual = DaySpan.Between(today.PlusDays(1 - UsualDays), today);
        var faults = new FieldFaults();
        Days = AskedDays.TryRead(
            From is { Length: > 0 } ? From : LocalDatePattern.Iso.Format(usual.First),
            To is { Length: > 0 } ? To : LocalDatePattern.Iso.Format(usual.Last), today, faults, out var days)
            ? days
            : usual;
        Faults = [.. faults.Errors.Values.SelectMany(messages => messages)];
        var state = States.Cast<DayState?>().FirstOrDefault(known => Wording.Of(known!.Value) == State);
        View = await list.ReadAsync(
            new(Property, Days, Rule is { Length: > 0 } ? Rule : null, state, Person, At), cancellation);
    }

    /// <summary>The address of another page of the same list.</summary>
    public string AddressOf(int page) => QueryHelpers.AddQueryString("/review", new Dictionary<string, string?>
    {
        ["property"] = $"{Property}",
        ["from"] = LocalDatePattern.Iso.Format(Days.First),
        ["to"] = LocalDatePattern.Iso.Format(Days.Last),
        ["rule"] = Rule,
        ["state"] = State,
        ["person"] = $"{Person}",
        ["at"] = page.ToString(CultureInfo.InvariantCulture),
    });
}
