using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Crews;

/// <summary>Reads what crews do on which day, with how each day stands.</summary>
public sealed class BoardReader(WorkWindowsDb db, VisibleTasks visible, TaskEvaluator evaluator, WeekHandler week)
{
    /// <param name="days">The days to show.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Board> ReadAsync(DaySpan days, CancellationToken cancellation)
    {
        var today = await week.TodayAsync(cancellation);
        var (first, last) = (days.First, days.Last);
        var bookings = await db.Bookings.AsNoTracking().AsSplitQuery()
            .Include(booking => booking.People).Include(booking => booking.Equipment)
            .Where(booking => booking.Day >= first && booking.Day <= last)
            .OrderBy(booking => booking.Day).ThenBy(booking => booking.Place).ThenBy(booking => booking.Id)
            .ToListAsync(cancellation);
        var booked = bookings.Select(booking => booking.TaskId).ToHashSet();
        var shown = visible.All.Where(task => booked.Contains(task.Id)
            || (task.CompletedOn == null && !db.Bookings.Any(row => row.TaskId == task.Id && row.Day >= first)));
        var tasks = (await evaluator.ReadAsync(shown, days, cancellation)).ToDictionary(input => input.Task.Id);
        var crews = await CrewsView.ReadAsync(db, first, cancellation);
        var off = await db.Absences.AsNoTracking()
            .Where(row => row.FirstDay <= last && row.LastDay >= first).ToListAsync(cancellation);
        var names = crews.Workers.ToDictionary(worker => worker.Id, worker => worker.Name);
        var pieces = crews.Equipment.ToDictionary(piece => piece.Id, piece => piece.Name);
        var comesFirst = await ComesFirstAsync(booked, cancellation);
        var cards = new List<(Guid Crew, BookingCard Card)>(bookings.Count);
        foreach (var task in bookings.GroupBy(booking => booking.TaskId).Where(one => tasks.ContainsKey(one.Key)))
        {
            var input = tasks[task.Key];
            var evaluation = input.Evaluated().Evaluation;
            var chances = input.Weather.Chances.Ensemble.Years.IsEmpty ? null : input.ChancesOf(days);
            cards.AddRange(task.Select(booking => (booking.CrewId, new BookingCard(
                booking.Id, input.Task, booking.Day, booking.Hours, booking.IsFixed, evaluation[booking.Day],
                chances?[booking.Day],
                [.. booking.People.Select(person => names.GetValueOrDefault(person.PersonId, "somebody who has left"))
                    .Order(StringComparer.Ordinal)],
                [.. booking.Equipment.Select(piece => pieces[piece.EquipmentId]).Order(StringComparer.Ordinal)],
                Missing(booking),
                comesFirst[booking.TaskId].FirstOrDefault(first => !(first.LastBooked < booking.Day))?.Practice))));
        }
        var places = bookings.Select((booking, index) => (booking.Id, index)).ToDictionary(one => one.Id, one => one.index);
        var byCell = cards.OrderBy(one => places[one.Card.Id]).ToLookup(one => (one.Crew, one.Card.Day), one => one.Card);
        LocalDate[] dates = [.. Enumerable.Range(0, days.Count).Select(day => days[day])];
        return new(
            today, dates,
            [.. crews.Crews.Select(card => new BoardRow(
                card.Crew.Id, card.Crew.Name,
                [.. dates.Select(day => new BoardCell(day, Off(card.Crew, day, off), [.. byCell[(card.Crew.Id, day)]]))]))],
            [.. tasks.Values.Where(input => !booked.Contains(input.Task.Id)).Select(input => Waiting(input, [.. dates.Where(day => day >= today)]))]);

        IReadOnlyList<string> Missing(Booking booking)
        {
            var away = off.Where(row => row.FirstDay <= booking.Day && row.LastDay >= booking.Day).ToList();
            var crew = crews.Crews.First(card => card.Crew.Id == booking.CrewId).Crew;
            return Off(crew, booking.Day, off) is not null
                ? [crew.Name]
                :
                [
                    .. away.Where(row => booking.People.Any(person => person.PersonId == row.PersonId))
                        .Select(row => names.GetValueOrDefault(row.PersonId!.Value, "somebody")),
                    .. away.Where(row => booking.Equipment.Any(piece => piece.EquipmentId == row.EquipmentId))
                        .Select(row => pieces[row.EquipmentId!.Value]),
                ];
        }
    }

    /// <summary>For each task the work that must be done before it and is not, with the last day for which that is booked.</summary>
    private async Task<ILookup<Guid, First>> ComesFirstAsync(HashSet<Guid> tasks, CancellationToken cancellation) =>
        (await db.TaskPrerequisites.AsNoTracking().Where(link => tasks.Contains(link.TaskId))
            .Join(
                db.PlannedTasks.Where(first => first.CompletedOn == null), link => link.PrerequisiteId, first => first.Id,
                (link, first) => new
                {
                    link.TaskId,
                    first.PracticeId,
                    LastBooked = db.Bookings.Where(booking => booking.TaskId == first.Id).Max(booking => (LocalDate?)booking.Day),
                })
            .OrderBy(first => first.PracticeId).ToListAsync(cancellation))
        .ToLookup(first => first.TaskId, first => new First(
            PracticeCatalogue.Find(first.PracticeId)?.Name ?? first.PracticeId, first.LastBooked));

    private sealed record First(string Practice, LocalDate? LastBooked);

    private static WaitingTask Waiting(TaskInput input, IReadOnlyList<LocalDate> dates)
    {
        var evaluation = input.Evaluated().Evaluation;
        return new(input.Task, [.. dates.Where(day => evaluation[day] is DayState.Open or DayState.Limited)]);
    }

    private static string? Off(Crew crew, LocalDate day, List<Absence> off) =>
        day < crew.FirstDay ? "not yet"
        : day > crew.LastDay ? "no longer"
        : off.Find(row => row.CrewId == crew.Id && row.FirstDay <= day && row.LastDay >= day) is { } absence
            ? absence.Reason ?? "off"
            : null;
}
