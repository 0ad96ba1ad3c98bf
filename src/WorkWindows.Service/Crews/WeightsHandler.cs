using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Engine.Stands.Suitability;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>What an organization asks of a practice.</summary>
/// <param name="Practice">A key of the practice catalogue.</param>
/// <param name="Points">What one of acres, stems, feet or hours is worth; units that are not there have the usual weight.</param>
/// <param name="Certificates">Titles of certificates, each held by somebody present.</param>
/// <param name="EquipmentKinds">Kinds of equipment that must be there.</param>
public sealed record PracticeWeight(
    string? Practice, IReadOnlyDictionary<string, decimal>? Points, IReadOnlyList<string>? Certificates, IReadOnlyList<string>? EquipmentKinds);

/// <summary>What an organization has set; a part that is null is as usual.</summary>
/// <param name="PointsPerTravelHour">Points that an hour of driving costs.</param>
/// <param name="PointsPerChange">Points that it costs to change a day that was told.</param>
/// <param name="RoadFactor">How much longer roads are than the great circle, 1 to 5.</param>
/// <param name="RoadSpeedKmPerHour">Speed on the road, km/h.</param>
/// <param name="SpacingFt">How far two crews keep apart, feet.</param>
/// <param name="HingeEasyDbhIn">Up to this diameter a stem bends without splitting, inches.</param>
/// <param name="HingeLargestDbhIn">Above this diameter nothing is hinged, inches.</param>
/// <param name="HingeLargestBrittleDbhIn">The same for cherry and red maple, inches.</param>
/// <param name="ClosedCanopyPercent">More cover than this is a closed canopy, percent.</param>
/// <param name="PocketLeastAcres">The least pocket of hinged trees, acres.</param>
/// <param name="PocketMostAcres">The largest, acres.</param>
/// <param name="CutLowestFt">The least height of the cut, feet.</param>
/// <param name="CutHighestFt">The greatest, feet.</param>
/// <param name="HingeSpecies">Species, by name as in the species catalogue, that are hinged otherwise than usual: fits, withCare or no.</param>
/// <param name="TieDownFromYears">Years after a hinge cut from which stems are tied down.</param>
/// <param name="TieDownToYears">And by which.</param>
/// <param name="ReCutFromYears">Years after a hinge cut or a re-cut from which stems are cut again.</param>
/// <param name="ReCutToYears">And by which.</param>
/// <param name="Practices">Practices that are not as usual.</param>
public sealed record WeightsForm(
    double? PointsPerTravelHour, double? PointsPerChange, double? RoadFactor, double? RoadSpeedKmPerHour, double? SpacingFt,
    double? HingeEasyDbhIn, double? HingeLargestDbhIn, double? HingeLargestBrittleDbhIn, double? ClosedCanopyPercent,
    double? PocketLeastAcres, double? PocketMostAcres, double? CutLowestFt, double? CutHighestFt,
    IReadOnlyDictionary<string, Fit>? HingeSpecies,
    int? TieDownFromYears, int? TieDownToYears, int? ReCutFromYears, int? ReCutToYears,
    IReadOnlyList<PracticeWeight>? Practices)
{
    /// <summary>Accepted values: the field, the least and the most.</summary>
    private IEnumerable<(string Field, double? Value, double Least, double Most, string Unit)> Numbers =>
    [
        ("pointsPerTravelHour", PointsPerTravelHour, 0, 1_000, "points"), ("pointsPerChange", PointsPerChange, 0, 1_000, "points"),
        ("roadFactor", RoadFactor, 1, 5, "times"), ("roadSpeedKmPerHour", RoadSpeedKmPerHour, 5, 120, "km/h"),
        ("spacingFt", SpacingFt, 0, 5_280, "feet"), ("hingeEasyDbhIn", HingeEasyDbhIn, 1, 20, "inches"),
        ("hingeLargestDbhIn", HingeLargestDbhIn, 1, 20, "inches"),
        ("hingeLargestBrittleDbhIn", HingeLargestBrittleDbhIn, 1, 20, "inches"),
        ("closedCanopyPercent", ClosedCanopyPercent, 1, 100, "percent"), ("pocketLeastAcres", PocketLeastAcres, 0.01, 100, "acres"),
        ("pocketMostAcres", PocketMostAcres, 0.01, 100, "acres"), ("cutLowestFt", CutLowestFt, 0.5, 10, "feet"),
        ("cutHighestFt", CutHighestFt, 0.5, 4.5, "feet"), ("tieDownFromYears", TieDownFromYears, 1, 20, "years"),
        ("tieDownToYears", TieDownToYears, 1, 20, "years"), ("reCutFromYears", ReCutFromYears, 1, 20, "years"),
        ("reCutToYears", ReCutToYears, 1, 20, "years"),
    ];

    internal void Check(FieldFaults faults)
    {
        foreach (var (field, value, least, most, unit) in Numbers)
        {
            if (value is not null && !(value >= least && value <= most))
                faults.Add(field, value, $"{unit} from {least} to {most}, or nothing for the usual");
        }
        var usual = new HingeLimits();
        CheckEnds("hingeEasyDbhIn", HingeEasyDbhIn ?? usual.EasyDbhIn, HingeLargestDbhIn ?? usual.LargestDbhIn);
        CheckEnds("pocketLeastAcres", PocketLeastAcres ?? usual.PocketAcres.Low, PocketMostAcres ?? usual.PocketAcres.High);
        CheckEnds("cutLowestFt", CutLowestFt ?? usual.CutHeightFt.Low, CutHighestFt ?? usual.CutHeightFt.High);
        CheckEnds("tieDownFromYears", FollowUps.TieDownFrom, FollowUps.TieDownTo);
        CheckEnds("reCutFromYears", FollowUps.ReCutFrom, FollowUps.ReCutTo);
        foreach (var (name, fit) in HingeSpecies ?? new Dictionary<string, Fit>())
        {
            if (SpeciesCatalogue.Find(name) is not { } species)
                faults.Add("hingeSpecies", name, "names of the species catalogue");
            else if (HingeSpecies!.Keys.First(one => SpeciesCatalogue.Find(one) == species) != name)
                faults.Add("hingeSpecies", name, "each species once");
            if (fit is not (Fit.Fits or Fit.WithCare or Fit.No))
                faults.Add("hingeSpecies", fit, "fits, withCare or no");
        }
        for (var index = 0; index < Practices?.Count; index++)
        {
            if (Practices[index] is not { } one)
            {
                faults.Add($"practices[{index}]", null, "a practice and what it weighs");
                continue;
            }
            faults.Required($"practices[{index}].practice", one.Practice, id => PracticeCatalogue.Find(id) is not null,
                "a key of the practice catalogue");
            if (Practices.Take(index).Any(other => other?.Practice == one.Practice))
                faults.Add($"practices[{index}].practice", one.Practice, "each practice once");
            foreach (var (unit, points) in one.Points ?? new Dictionary<string, decimal>())
            {
                if (!PracticeWeights.Units.Contains(unit))
                    faults.Add($"practices[{index}].points", unit, "acres, stems, feet or hours");
                if (points is not (>= 0 and <= 100_000))
                    faults.Add($"practices[{index}].points.{unit}", points, "points from 0 to 100000, or nothing for the usual");
            }
            foreach (var title in (one.Certificates ?? []).Concat(one.EquipmentKinds ?? []).Where(title => !FieldText.IsName(title.Trim())))
                faults.Add($"practices[{index}]", title, FieldText.Name);
        }

        void CheckEnds(string field, double least, double most)
        {
            if (least > most)
                faults.Add(field, least, $"at most the other end, {most}");
        }
    }

    internal FollowUpYears FollowUps
    {
        get
        {
            var usual = new FollowUpYears();
            return new()
            {
                TieDownFrom = TieDownFromYears ?? usual.TieDownFrom,
                TieDownTo = TieDownToYears ?? usual.TieDownTo,
                ReCutFrom = ReCutFromYears ?? usual.ReCutFrom,
                ReCutTo = ReCutToYears ?? usual.ReCutTo,
            };
        }
    }

    internal HingeLimits Limits
    {
        get
        {
            var usual = new HingeLimits();
            return new()
            {
                EasyDbhIn = HingeEasyDbhIn ?? usual.EasyDbhIn,
                LargestDbhIn = HingeLargestDbhIn ?? usual.LargestDbhIn,
                LargestBrittleDbhIn = HingeLargestBrittleDbhIn ?? usual.LargestBrittleDbhIn,
                ClosedCanopyPercent = ClosedCanopyPercent ?? usual.ClosedCanopyPercent,
                PocketAcres = new(PocketLeastAcres ?? usual.PocketAcres.Low, PocketMostAcres ?? usual.PocketAcres.High),
                CutHeightFt = new(CutLowestFt ?? usual.CutHeightFt.Low, CutHighestFt ?? usual.CutHeightFt.High),
                Species = HingeSpecies?.ToImmutableSortedDictionary(one => SpeciesCatalogue.Find(one.Key)!.Name, one => one.Value)
                    ?? usual.Species,
            };
        }
    }

    /// <summary>What is set, every number written out.</summary>
    internal static WeightsForm Of(PlanningSetting setting, IEnumerable<PracticeSetting> practices) => new(
        setting.PointsPerTravelHour, setting.PointsPerChange, setting.RoadFactor, setting.RoadSpeedKmPerHour, setting.SpacingFt,
        setting.HingeLimits.EasyDbhIn, setting.HingeLimits.LargestDbhIn, setting.HingeLimits.LargestBrittleDbhIn,
        setting.HingeLimits.ClosedCanopyPercent, setting.HingeLimits.PocketAcres.Low, setting.HingeLimits.PocketAcres.High,
        setting.HingeLimits.CutHeightFt.Low, setting.HingeLimits.CutHeightFt.High, setting.HingeLimits.Species,
        setting.FollowUpYears.TieDownFrom, setting.FollowUpYears.TieDownTo,
        setting.FollowUpYears.ReCutFrom, setting.FollowUpYears.ReCutTo,
        [.. practices.Select(one => new PracticeWeight(one.PracticeId, one.Points, one.Certificates, one.EquipmentKinds))]);
}

/// <summary>Reads and replaces what an organization has set for plans and advice.</summary>
public sealed class WeightsHandler(WorkWindowsDb db, CurrentOrganization organization)
{
    public async Task<WeightsForm> ReadAsync(CancellationToken cancellation) => WeightsForm.Of(
        await db.PlanningSettings.AsNoTracking().SingleOrDefaultAsync(cancellation) ?? new(),
        await db.PracticeSettings.AsNoTracking().OrderBy(one => one.PracticeId).ToListAsync(cancellation));

    public async Task<Change<WeightsForm>> SaveAsync(WeightsForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        var faults = new FieldFaults();
        form.Check(faults);
        if (faults.Any)
            return Change.Refused<WeightsForm>(faults);
        var setting = await db.PlanningSettings.SingleOrDefaultAsync(cancellation);
        if (setting is null)
            db.Add(setting = new());
        var usual = new PlanningSetting();
        setting.PointsPerTravelHour = form.PointsPerTravelHour ?? usual.PointsPerTravelHour;
        setting.PointsPerChange = form.PointsPerChange ?? usual.PointsPerChange;
        setting.RoadFactor = form.RoadFactor ?? usual.RoadFactor;
        setting.RoadSpeedKmPerHour = form.RoadSpeedKmPerHour ?? usual.RoadSpeedKmPerHour;
        setting.SpacingFt = form.SpacingFt ?? usual.SpacingFt;
        setting.HingeLimits = form.Limits;
        setting.FollowUpYears = form.FollowUps;
        await SavePracticesAsync(form.Practices ?? [], cancellation);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        return Change.Done(await ReadAsync(cancellation));
    }

    private async Task SavePracticesAsync(IReadOnlyList<PracticeWeight> wanted, CancellationToken cancellation)
    {
        var stored = await db.PracticeSettings.ToDictionaryAsync(one => one.PracticeId, cancellation);
        foreach (var one in wanted.Where(one => one.Points?.Count > 0 || one.Certificates?.Count > 0 || one.EquipmentKinds?.Count > 0))
        {
            if (!stored.Remove(one.Practice!, out var setting))
                db.Add(setting = new() { PracticeId = one.Practice! });
            setting.Points = (one.Points ?? new Dictionary<string, decimal>()).ToImmutableSortedDictionary();
            setting.Certificates = [.. (one.Certificates ?? []).Select(title => title.Trim()).Distinct()];
            setting.EquipmentKinds = [.. (one.EquipmentKinds ?? []).Select(kind => kind.Trim()).Distinct()];
        }
        db.RemoveRange(stored.Values);
    }
}
