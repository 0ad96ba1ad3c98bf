using Microsoft.EntityFrameworkCore;
using WorkWindows.Feeds.Portfolio;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>A piece of equipment as it is handed in.</summary>
/// <param name="Name">Its name; each of the organization once.</param>
/// <param name="Kind">What work asks for, such as rope winch.</param>
/// <param name="CrewId">The only crew that uses it; null where every crew may.</param>
public sealed record EquipmentForm(string? Name, string? Kind, Guid? CrewId);

/// <summary>Creates, changes and deletes equipment.</summary>
public sealed class EquipmentHandler(WorkWindowsDb db)
{
    /// <param name="id">The piece to change; null for a new one.</param>
    /// <param name="form">As it is wanted.</param>
    /// <param name="cancellation">Ends the queries.</param>
    public async Task<Change<Equipment>> SaveAsync(Guid? id, EquipmentForm form, CancellationToken cancellation)
    {
        var piece = id is null ? null : await db.Equipment.SingleOrDefaultAsync(row => row.Id == id, cancellation);
        if (id is not null && piece is null)
            return Change.NotFound<Equipment>();
        var faults = new FieldFaults();
        var name = faults.Required("name", form.Name, FieldText.IsName, FieldText.Name);
        var kind = faults.Required("kind", form.Kind, FieldText.IsName, FieldText.Name);
        if (form.CrewId is { } crew && !await db.Crews.AnyAsync(row => row.Id == crew, cancellation))
            faults.Add("crewId", crew, "the id of a crew, or nothing");
        if (faults.Any)
            return Change.Refused<Equipment>(faults);
        if (await db.Equipment.AnyAsync(other => other.Name == name && other.Id != id, cancellation))
            return Change.Conflict<Equipment>($"Equipment '{name}' exists already.");
        if (piece is null)
            db.Add(piece = new() { Name = name, Kind = kind });
        (piece.Name, piece.Kind, piece.CrewId) = (name, kind, form.CrewId);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(piece);
    }

    public async Task<Change<Equipment>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await db.Equipment.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } piece)
            return Change.NotFound<Equipment>();
        if (await db.Set<BookedEquipment>().AnyAsync(booked => booked.EquipmentId == id, cancellation))
        {
            return Change.Conflict<Equipment>(
                $"'{piece.Name}' is booked, which is kept; say on which days it is not to be had instead.");
        }
        db.Remove(piece);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(piece);
    }
}
