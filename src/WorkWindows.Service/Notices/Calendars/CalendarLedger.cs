using NodaTime;

namespace WorkWindows.Service.Notices.Calendars;

/// <summary>
/// What people's calendars have been told. Each change of an entry raises its sequence number; telling the same again
/// changes nothing.
/// </summary>
/// <param name="told">The entries that were told before.</param>
/// <param name="now">The time of the changes.</param>
public sealed class CalendarLedger(IEnumerable<CalendarDay> told, Instant now)
{
    /// <summary>How many days an entry stays in a feed after its last day.</summary>
    public const int DaysBack = 60;

    private readonly Dictionary<(Guid Person, string Key), CalendarDay> _days =
        told.ToDictionary(day => (day.PersonId, day.Key));

    /// <summary>The entries that are told for the first time.</summary>
    public List<CalendarDay> Added { get; } = [];

    public IEnumerable<CalendarDay> Days => _days.Values;

    /// <returns>The entry as it is told now.</returns>
    public CalendarDay Publish(Guid person, CalendarEntry entry)
    {
        if (!_days.TryGetValue((person, entry.Key), out var day))
        {
            day = new()
            {
                PersonId = person,
                Key = entry.Key,
                First = entry.First,
                Last = entry.Last,
                From = entry.Hours?.Start,
                Until = entry.Hours?.End,
                TimeZone = entry.TimeZone,
                Title = entry.Title,
                Place = entry.Place,
                IsCancelled = false,
                Sequence = 0,
                ChangedAt = now,
            };
            _days.Add((person, entry.Key), day);
            Added.Add(day);
        }
        else if (day.IsCancelled || Of(day) != entry)
        {
            (day.First, day.Last) = (entry.First, entry.Last);
            (day.From, day.Until) = (entry.Hours?.Start, entry.Hours?.End);
            (day.TimeZone, day.Title, day.Place, day.IsCancelled) = (entry.TimeZone, entry.Title, entry.Place, false);
            Change(day);
        }
        return day;
    }

    /// <returns>The entry as it is taken back now; null when it was never told.</returns>
    public CalendarDay? Cancel(Guid person, string key)
    {
        var day = _days.GetValueOrDefault((person, key));
        if (day is { IsCancelled: false })
        {
            day.IsCancelled = true;
            Change(day);
        }
        return day;
    }

    private void Change(CalendarDay day)
    {
        day.Sequence++;
        day.ChangedAt = now;
    }

    private static CalendarEntry Of(CalendarDay day) => new(
        day.Key, day.First, day.Last, day.Title, day.Place, day.TimeZone,
        day is { From: { } from, Until: { } until } ? new(from, until) : null);
}
