using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Engine.Days;

namespace WorkWindows.Engine.Weather.Parcels;

/// <summary>A station of a record.</summary>
/// <param name="Station">The station.</param>
/// <param name="DistanceM">Great-circle distance from the place, m.</param>
/// <param name="Share">
/// Its share in the temperatures of days on which all have one, 0 to 1; 0: it only fills gaps.
/// </param>
public sealed record Contributor(WeatherStation Station, double DistanceM, double Share);

/// <summary>A station's weight in one value.</summary>
public sealed record ContributorWeight(WeatherStation Station, double Weight);

/// <summary>
/// The daily weather of a place, put together from the stations around, with what each value comes from. Source:
/// docs/rules/parcel-record.md.
/// </summary>
public sealed class ParcelRecord
{
    /// <summary>A handful: more lie further away and add little.</summary>
    public const int MaxStations = 5;

    /// <summary>Stations with a smaller share in the temperatures have none, and only fill gaps, 0 to 1.</summary>
    public const double LeastShare = 0.05;

    /// <summary>The years before the end of the record whose days tell the errors.</summary>
    public const int ErrorYears = 10;

    private readonly ImmutableDictionary<DailyElement, Blend> blends;
    private readonly ImmutableDictionary<DailyElement, (HeldOutError? Filling, HeldOutError? Blending)> errors;

    private ParcelRecord(
        DailySeries series, ImmutableArray<Contributor> stations, ImmutableDictionary<DailyElement, Blend> blends,
        ImmutableDictionary<DailyElement, (HeldOutError?, HeldOutError?)> errors) =>
        (Series, Stations, this.blends, this.errors) = (series, stations, blends, errors);

    /// <summary>The values.</summary>
    public DailySeries Series { get; }

    /// <summary>Where they come from: the primary station, then the others by distance.</summary>
    public ImmutableArray<Contributor> Stations { get; }

    /// <summary>
    /// The error of a temperature of a day on which the primary station, or another that is the whole mean in its
    /// place, has none: how well the others tell its own readings of the last ten years. Null for other elements, and
    /// with one station.
    /// </summary>
    public HeldOutError? FillingError(DailyElement element) => errors.GetValueOrDefault(element).Filling;

    /// <summary>
    /// The error of a temperature blended from several stations: how well the place of each is told by the others over
    /// the last ten years. They lie further apart than the place lies from them, so it is rather too large. Null for
    /// other elements, and where one station is the whole value.
    /// </summary>
    public HeldOutError? BlendingError(DailyElement element) => errors.GetValueOrDefault(element).Blending;

    /// <summary>The stations behind a day's value, with weights that sum to 1; none without a value.</summary>
    public ImmutableArray<ContributorWeight> WeightsOf(DailyElement element, LocalDate date)
    {
        if (Series[element] is not { } column || double.IsNaN(column[date]))
            return [];
        if (column.Contributors.IsDefault)
            return [new(Stations[0].Station, 1)];
        var known = column.Contributors[Period.DaysBetween(column.First, date)] & ~DailyColumn.Blended;
        var weights = blends.TryGetValue(element, out var blend) ? blend.WeightsOf(known) : null;
        return
        [
            .. Stations.Select((station, i) => new ContributorWeight(
                    station.Station, (known & 1 << i) == 0 ? 0 : weights?[i] ?? 1))
                .Where(weight => weight.Weight > 0),
        ];
    }

    /// <summary>The record of one station, unchanged.</summary>
    public static ParcelRecord Of(RecordStation station, RecordPlace place) => new(
        station.Record.Usable, [new(station.Station, place.DistanceM(station.Station), 1)],
        ImmutableDictionary<DailyElement, Blend>.Empty,
        ImmutableDictionary<DailyElement, (HeldOutError?, HeldOutError?)>.Empty);

    /// <summary>The record of a place among stations.</summary>
    /// <param name="group">The stations; one alone gives its own record, unchanged.</param>
    /// <param name="primaryId">
    /// The station that elements other than temperature are taken from first, one of the group; wind and gusts come
    /// from no other.
    /// </param>
    /// <param name="place">The place. Only the nearest <see cref="MaxStations"/> stations are used.</param>
    public static ParcelRecord Of(StationGroup group, string primaryId, RecordPlace place)
    {
        int[] members = [.. group.InOrder(place, primaryId).Take(MaxStations)];
        if (members is [var only])
            return Of(group.Records[only], place);
        var record = new PlaceBlend(group, members, place);
        var days = DaySpan.Between(group.Days.Last.PlusYears(-ErrorYears).PlusDays(1), group.Days.Last);
        var blends = ImmutableDictionary.CreateBuilder<DailyElement, Blend>();
        var errors = ImmutableDictionary.CreateBuilder<DailyElement, (HeldOutError?, HeldOutError?)>();
        foreach (var element in new[] { DailyElement.MinTemperatureC, DailyElement.MaxTemperatureC })
        {
            blends[element] = record.Of(element);
            errors[element] = (
                record.ErrorOfFilling(element, days),
                record.Whole is null ? record.ErrorOfBlending(element, days) : null);
        }
        return new(
            RecordColumns.Of(group, members, blends.ToImmutable(), record.Whole),
            [.. members.Select((member, i) => new Contributor(
                group.Stations[member], place.DistanceM(group.Stations[member]), record.Shares[i]))],
            blends.ToImmutable(), errors.ToImmutable());
    }
}
