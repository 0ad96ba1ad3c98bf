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
public sealed class BoardReader(WorkWindowsDb db, VisibleTasks visible, TaskEvaluator evaluator)
{
    /// <param name="days">The days to show.</param>
    /// <param name="today">The day it is.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Board> ReadAsync(DaySpan days, LocalDate today, CancellationToken cancellation)
    {
        var (first, last) = (days.First, days.Last);
        var bookings = await BookedAsync(first, last, cancellation);
        var booked = bookings.Select(booking => booking.TaskId).ToHashSet();
        var shown = visible.All.Where(task => booked.Contains(task.Id)
            || (task.CompletedOn == null && !db.Bookings.Any(row => row.TaskId == task.Id && row.Day >= first)));
        var tasks = (await evaluator.ReadAsync(shown, days, cancellation)).ToDictionary(input => input.Task.Id);
        var crews = await db.Crews.AsNoTracking().OrderBy(crew => crew.Name).ToListAsync(cancellation);
        var off = await db.Absences.AsNoTracking()
            .Where(row => row.FirstDay <= last && row.LastDay >= first).ToListAsync(cancellation);
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
                [.. booking.People.Select(person => person.Name).Order(StringComparer.Ordinal)],
                [.. booking.Equipment.Select(piece => piece.Name).Order(StringComparer.Ordinal)],
                Missing(booking),
                comesFirst[booking.TaskId].FirstOrDefault(first => !(first.LastBooked < booking.Day))?.Practice))));
        }
        var places = bookings.Select((booking, index) => (booking.Id, index)).ToDictionary(one => one.Id, one => one.index);
        var byCell = cards.OrderBy(one => places[one.Card.Id]).ToLookup(one => (one.Crew, one.Card.Day), one => one.Card);
        LocalDate[] dates = [.. Enumerable.Range(0, days.Count).Select(day => days[day])];
        return new(
            today, dates,
            [.. crews.Select(crew => new BoardRow(
                crew.Id, crew.Name, [.. dates.Select(day => new BoardCell(day, Off(crew, day, off), [.. byCell[(crew.Id, day)]]))]))],
            [.. tasks.Values.Where(input => !booked.Contains(input.Task.Id)).Select(input => Waiting(input, [.. dates.Where(day => day >= today)]))]);

        IReadOnlyList<string> Missing(Booked booking)
        {
            var away = off.Where(row => row.FirstDay <= booking.Day && row.LastDay >= booking.Day).ToList();
            var crew = crews.First(one => one.Id == booking.CrewId);
            return Off(crew, booking.Day, off) is not null
                ? [crew.Name]
                :
                [
                    .. booking.People.Where(person => away.Exists(row => row.PersonId == person.Id)).Select(person => person.Name),
                    .. booking.Equipment.Where(piece => away.Exists(row => row.EquipmentId == piece.Id)).Select(piece => piece.Name),
                ];
        }
    }

    private async Task<List<Booked>> BookedAsync(LocalDate first, LocalDate last, CancellationToken cancellation) =>
    [
        .. (await db.Bookings.AsNoTracking().Where(booking => booking.Day >= first && booking.Day <= last)
            .OrderBy(booking => booking.Day).ThenBy(booking => booking.Place).ThenBy(booking => booking.Id)
            .Select(booking => new
            {
                booking.Id,
                booking.TaskId,
                booking.CrewId,
                booking.Day,
                booking.Hours,
                booking.IsFixed,
                People = booking.People.Select(one => new
                {
                    Id = one.PersonId,
                    Name = db.People.Where(person => person.Id == one.PersonId).Select(person => person.DisplayName).FirstOrDefault(),
                }).ToList(),
                Equipment = booking.Equipment.Join(
                    db.Equipment, one => one.EquipmentId, piece => piece.Id, (one, piece) => new { piece.Id, piece.Name }).ToList(),
            })
            .ToListAsync(cancellation))
        .Select(row => new Booked(
            row.Id, row.TaskId, row.CrewId, row.Day, row.Hours, row.IsFixed,
            row.People.ConvertAll(person => (person.Id, person.Name ?? "somebody who has left")),
            row.Equipment.ConvertAll(piece => (piece.Id, piece.Name)))),
    ];

    /// <summary>A booking with the names of who and what is booked.</summary>
    private sealed record Booked(
        Guid Id, Guid TaskId, Guid CrewId, LocalDate Day, decimal Hours, bool IsFixed, IReadOnlyList<(Guid Id, string Name)> People,
        IReadOnlyList<(Guid Id, string Name)> Equipment);

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
