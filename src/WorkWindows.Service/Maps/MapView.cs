using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Morning;

namespace WorkWindows.Service.Maps;

/// <summary>A parcel as a map needs it.</summary>
public sealed record MappedParcel(
    Guid Id, string Name, Guid PropertyId, string Property, double Latitude, double Longitude, string? Boundary);

/// <summary>A mark on the map, and a line of the list under it: a parcel, or a property where there are too many of them.</summary>
/// <param name="Id">The parcel, or the property.</param>
/// <param name="IsParcel">Which of both.</param>
/// <param name="Name">Its name.</param>
/// <param name="PropertyId">The property.</param>
/// <param name="Property">Its name.</param>
/// <param name="At">Where it is drawn.</param>
/// <param name="Path">Its boundary as the data of an SVG path; null for none.</param>
/// <param name="State">The best state of the day of the work that is due there; null where none is.</param>
/// <param name="Tasks">Pieces of work that are due.</param>
/// <param name="Workable">Those of them that may be done.</param>
/// <param name="IsLabelled">Whether there is room for its name.</param>
public sealed record MapMark(
    Guid Id, bool IsParcel, string Name, Guid PropertyId, string Property, MapPoint At, string? Path, DayState? State,
    int Tasks, int Workable, bool IsLabelled);

/// <summary>The land that a map shows, on one day.</summary>
public sealed record MapView(MapFrame Frame, IReadOnlyList<MapMark> Marks)
{
    /// <summary>With more parcels in sight, or from farther away, there is a mark for each property: our own choice.</summary>
    public const int MostParcels = 150, ParcelsFromZoom = 11;

    private const double MarkSize = 26, LetterWidth = 9.5, LabelHeight = 22;

    /// <param name="frame">What is shown.</param>
    /// <param name="parcels">All parcels.</param>
    /// <param name="outlooks">All tasks to be done.</param>
    /// <param name="day">The day.</param>
    /// <param name="now">The moment.</param>
    public static MapView Of(
        MapFrame frame, IReadOnlyCollection<MappedParcel> parcels, IEnumerable<OutlookRow> outlooks, LocalDate day, Instant now)
    {
        var seen = parcels.Where(parcel => frame.Shows(frame.Of(parcel.Latitude, parcel.Longitude))).ToList();
        var due = outlooks.Where(task => task.IsDue(day)).ToLookup(task => task.ParcelId);
        var marks = seen.Count <= MostParcels && frame.Zoom >= ParcelsFromZoom
            ? seen.Select(parcel => Mark(parcel.Id, parcel.Name, [parcel], isParcel: true))
            : seen.GroupBy(parcel => parcel.PropertyId)
                .Select(property => Mark(property.Key, property.First().Property, [.. property], isParcel: false));
        return new(frame, Labelled([.. marks]));

        MapMark Mark(Guid id, string name, IReadOnlyList<MappedParcel> of, bool isParcel)
        {
            var tasks = of.SelectMany(parcel => due[parcel.Id]).Select(task => task.On(day, now)).ToList();
            return new(
                id, isParcel, name, of[0].PropertyId, of[0].Property,
                frame.Of(of.Average(parcel => parcel.Latitude), of.Average(parcel => parcel.Longitude)),
                isParcel && of[0].Boundary is { } boundary ? ParcelShape.Path(frame, boundary) : null,
                Best(tasks), tasks.Count, tasks.Count(state => state is DayState.Open or DayState.Limited), false);
        }
    }

    /// <summary>What is unknown comes before what is closed: somebody may still find out.</summary>
    private static DayState? Best(IReadOnlyCollection<DayState> states)
    {
        foreach (var state in new[] { DayState.Open, DayState.Limited, DayState.Unknown, DayState.Closed })
        {
            if (states.Contains(state))
                return state;
        }
        return null;
    }

    /// <summary>Names stand right of their marks, where they lie on no other mark or name.</summary>
    private static List<MapMark> Labelled(List<MapMark> marks)
    {
        var taken = marks.ConvertAll(mark => (
            Left: mark.At.X - MarkSize / 2, Top: mark.At.Y - MarkSize / 2, Right: mark.At.X + MarkSize / 2, Bottom: mark.At.Y + MarkSize / 2));
        for (var index = 0; index < marks.Count; index++)
        {
            var (x, y) = marks[index].At;
            var box = (Left: x + MarkSize / 2 + 1, Top: y - LabelHeight / 2,
                Right: x + MarkSize / 2 + 1 + marks[index].Name.Length * LetterWidth, Bottom: y + LabelHeight / 2);
            if (box.Right > MapFrame.Width
                || taken.Exists(other => box.Left < other.Right && other.Left < box.Right && box.Top < other.Bottom && other.Top < box.Bottom))
            {
                continue;
            }
            taken.Add(box);
            marks[index] = marks[index] with { IsLabelled = true };
        }
        return marks;
    }
}
