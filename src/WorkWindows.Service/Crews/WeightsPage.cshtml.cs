using System.Collections.Immutable;
using System.Globalization;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Suitability;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Crews;

/// <summary>A number of the page.</summary>
/// <param name="Name">Its field.</param>
/// <param name="Label">What it is, with its unit.</param>
/// <param name="Value">What is set.</param>
/// <param name="Usual">The usual value.</param>
public sealed record WeightNumber(string Name, string Label, double? Value, double? Usual);

/// <summary>Where a consultant sees and sets what plans weigh and what advice keeps within.</summary>
[Authorize(Access.Plan)]
public sealed class WeightsPageModel(WeightsHandler weights) : PageModel
{
    private WeightsForm form = null!;

    /// <summary>The lists of species.</summary>
    public static ImmutableArray<(string Key, Fit Fit, string Label)> HingeFits { get; } =
    [
        ("fits", Fit.Fits, "Take a hinge"), ("with-care", Fit.WithCare, "With care"), ("no", Fit.No, "Never hinged"),
    ];

    public bool IsSaved { get; private set; }

    public IReadOnlyList<WeightNumber> Numbers { get; private set; } = [];

    public static ImmutableArray<Practice> Practices => PracticeCatalogue.All;

    public async Task OnGetAsync(CancellationToken cancellation) => Show(await weights.ReadAsync(cancellation));

    public async Task OnPostAsync([FromForm] WeightsForm numbers, CancellationToken cancellation)
    {
        var asked = numbers with { HingeSpecies = EnteredSpecies(), Practices = [.. Practices.Select(Entered)] };
        if (!ModelState.IsValid)
        {
            Show(asked);
            return;
        }
        var change = await weights.SaveAsync(asked, cancellation);
        foreach (var complaint in change.Complaints)
            ModelState.AddModelError("", complaint);
        IsSaved = change.Outcome == ChangeOutcome.Done;
        Show(change.Value ?? asked);
    }

    public PracticeWeight Of(Practice practice) => form.Practices?.FirstOrDefault(one => one.Practice == practice.Id)
        ?? new(practice.Id, null, [], []);

    /// <summary>The names of species that are said to be hinged so, separated by commas.</summary>
    public string SpeciesOf(Fit fit) => string.Join(", ", (form.HingeSpecies ?? new Dictionary<string, Fit>())
        .Where(one => one.Value == fit).Select(one => one.Key));

    /// <summary>The usual points of a unit.</summary>
    public static string Usual(Practice practice, string unit) =>
        PracticeWeights.PerUnit(practice, unit).ToString("0.##", CultureInfo.InvariantCulture);

    private PracticeWeight Entered(Practice practice)
    {
        var entered = new Dictionary<string, decimal>();
        foreach (var unit in PracticeWeights.Units)
        {
            var points = Request.Form[$"points-{practice.Id}-{unit}"].ToString();
            if (decimal.TryParse(points, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
                entered.Add(unit, number);
            else if (!string.IsNullOrWhiteSpace(points))
                ModelState.AddModelError("", $"{practice.Name}: '{points}' is no number of points.");
        }
        return new(practice.Id, entered, Titles($"certificates-{practice.Id}"), Titles($"equipment-{practice.Id}"));
    }

    private Dictionary<string, Fit> EnteredSpecies()
    {
        var entered = new Dictionary<string, Fit>();
        foreach (var fit in HingeFits)
        {
            foreach (var name in Titles($"hinge-{fit.Key}"))
            {
                if (!entered.TryAdd(SpeciesCatalogue.Find(name)?.Name ?? name, fit.Fit))
                    ModelState.AddModelError("", $"'{name}' stands in two lists of hinged species: give it once.");
            }
        }
        return entered;
    }

    private string[] Titles(string field) => Request.Form[field].ToString()
        .Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private void Show(WeightsForm shown)
    {
        form = shown;
        var usual = WeightsForm.Of(new(), []);
        Numbers =
        [
            new("pointsPerTravelHour", "Points that an hour of driving costs", form.PointsPerTravelHour, usual.PointsPerTravelHour),
            new("pointsPerChange", "Points that changing a day costs that was told", form.PointsPerChange, usual.PointsPerChange),
            new("roadFactor", "Roads are longer than the straight line, times", form.RoadFactor, usual.RoadFactor),
            new("roadSpeedKmPerHour", "Speed on the road, km/h", form.RoadSpeedKmPerHour, usual.RoadSpeedKmPerHour),
            new("spacingFt", "Two crews keep apart, feet", form.SpacingFt, usual.SpacingFt),
            new("hingeEasyDbhIn", "A stem bends without splitting up to, inches DBH", form.HingeEasyDbhIn, usual.HingeEasyDbhIn),
            new("hingeLargestDbhIn", "Nothing is hinged above, inches DBH", form.HingeLargestDbhIn, usual.HingeLargestDbhIn),
            new("hingeLargestBrittleDbhIn", "Cherry and red maple not above, inches DBH", form.HingeLargestBrittleDbhIn, usual.HingeLargestBrittleDbhIn),
            new("closedCanopyPercent", "A canopy is closed above, percent cover", form.ClosedCanopyPercent, usual.ClosedCanopyPercent),
            new("pocketLeastAcres", "Pocket of hinged trees, at least, acres", form.PocketLeastAcres, usual.PocketLeastAcres),
            new("pocketMostAcres", "At most, acres", form.PocketMostAcres, usual.PocketMostAcres),
            new("cutLowestFt", "Height of the cut, at least, feet", form.CutLowestFt, usual.CutLowestFt),
            new("cutHighestFt", "At most, feet", form.CutHighestFt, usual.CutHighestFt),
            new("tieDownFromYears", "Tie-down after a hinge cut, from, years", form.TieDownFromYears, usual.TieDownFromYears),
            new("tieDownToYears", "Until, years", form.TieDownToYears, usual.TieDownToYears),
            new("reCutFromYears", "Re-cut, from, years", form.ReCutFromYears, usual.ReCutFromYears),
            new("reCutToYears", "Until, years", form.ReCutToYears, usual.ReCutToYears),
        ];
    }
}
