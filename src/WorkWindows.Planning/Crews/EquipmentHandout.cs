using System.Collections.Immutable;
using NodaTime;
using WorkWindows.Planning.Cases;

namespace WorkWindows.Planning.Crews;

/// <summary>Says which piece each crew takes, its own before others; there are enough, as the plan has seen to.</summary>
public static class EquipmentHandout
{
    /// <returns>
    /// The same bookings with what is missing of the equipment that they need, as far as there is any; what is fixed stays as
    /// it is.
    /// </returns>
    public static ImmutableArray<Booking> Of(PlanCase plan, IReadOnlyList<Booking> bookings)
    {
        var tasks = plan.Tasks.ToDictionary(task => task.Id);
        var kept = plan.Fixed.Select(booking => (booking.TaskId, booking.Day)).ToHashSet();
        var taken = bookings.SelectMany(booking => booking.EquipmentIds, (booking, id) => (booking.Day, id))
            .ToHashSet();
        // A piece that was given out and that the crew may not have any more serves none of its other work.
        var held = bookings.SelectMany(booking => plan.Equipment.Where(piece => booking.EquipmentIds.Contains(piece.Id)
                && CrewDay.Usable(plan, piece.Kind, booking.CrewId, booking.Day).Contains(piece)),
            (booking, piece) => (booking.Day, booking.CrewId, piece.Kind, id: piece.Id))
            .DistinctBy(one => (one.Day, one.CrewId, one.Kind)).ToDictionary(one => (one.Day, one.CrewId, one.Kind), one => one.id);
        return
        [
            .. bookings.Select(booking => kept.Contains((booking.TaskId, booking.Day)) ? booking : booking with
            {
                EquipmentIds =
                [
                    .. booking.EquipmentIds.Concat(tasks[booking.TaskId].EquipmentKinds
                        .Select(kind => Piece(booking.Day, booking.CrewId, kind)).OfType<string>()).Distinct(),
                ],
            }),
        ];

        string? Piece(LocalDate day, string crew, string kind)
        {
            if (held.TryGetValue((day, crew, kind), out var id))
                return id;
            if (CrewDay.Usable(plan, kind, crew, day).FirstOrDefault(piece => !taken.Contains((day, piece.Id))) is not { } free)
                return null;
            taken.Add((day, free.Id));
            return held[(day, crew, kind)] = free.Id;
        }
    }
}
