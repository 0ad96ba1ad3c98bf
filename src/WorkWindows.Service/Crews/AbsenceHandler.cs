using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>Days off as they are handed in: of a person, a crew or a piece of equipment.</summary>
/// <param name="PersonId">The person, or null.</param>
/// <param name="CrewId">The crew, or null.</param>
/// <param name="EquipmentId">The piece, or null.</param>
/// <param name="FirstDay">The first day.</param>
/// <param name="LastDay">The last day, included; null for one day.</param>
/// <param name="Reason">Why, or null.</param>
public sealed record AbsenceForm(
    Guid? PersonId, Guid? CrewId, Guid? EquipmentId, LocalDate? FirstDay, LocalDate? LastDay, string? Reason);

/// <summary>Keeps on which days who or what is not there.</summary>
public sealed class AbsenceHandler(WorkWindowsDb db)
{
    private const int LongestReason = 200;

    public async Task<Change<Absence>> AddAsync(AbsenceForm form, CancellationToken cancellation)
    {
        var faults = new FieldFaults();
        if (new[] { form.PersonId, form.CrewId, form.EquipmentId }.Count(id => id is not null) != 1)
            faults.Add("personId", form.PersonId, "one of personId, crewId and equipmentId");
        if (form.PersonId is { } person && !await db.People.AnyAsync(row => row.Id == person, cancellation))
            faults.Add("personId", person, "the id of a person of the organization");
        if (form.CrewId is { } crew && !await db.Crews.AnyAsync(row => row.Id == crew, cancellation))
            faults.Add("crewId", crew, "the id of a crew");
        if (form.EquipmentId is { } piece && !await db.Equipment.AnyAsync(row => row.Id == piece, cancellation))
            faults.Add("equipmentId", piece, "the id of a piece of equipment");
        if (form.FirstDay is null)
            faults.Add("firstDay", null, "a day, such as 2027-02-15");
        else if (form.LastDay < form.FirstDay)
            faults.Add("lastDay", form.LastDay, $"{form.FirstDay:R} or a later day");
        var reason = faults.Optional(
            "reason", form.Reason, text => text.Length <= LongestReason, $"at most {LongestReason} characters");
        if (faults.Any)
            return Change.Refused<Absence>(faults);
        var first = form.FirstDay!.Value;
        var last = form.LastDay ?? first;
        var known = await db.Absences.FirstOrDefaultAsync(
            row => row.PersonId == form.PersonId && row.CrewId == form.CrewId && row.EquipmentId == form.EquipmentId
                && row.FirstDay == first && row.LastDay == last, cancellation);
        if (known is not null)
            return Change.Done(known);
        var absence = new Absence
        {
            PersonId = form.PersonId,
            CrewId = form.CrewId,
            EquipmentId = form.EquipmentId,
            FirstDay = first,
            LastDay = last,
            Reason = reason,
        };
        db.Add(absence);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(absence);
    }

    public async Task<Change<Absence>> DeleteAsync(Guid id, CancellationToken cancellation)
    {
        if (await db.Absences.SingleOrDefaultAsync(row => row.Id == id, cancellation) is not { } absence)
            return Change.NotFound<Absence>();
        db.Remove(absence);
        await db.SaveChangesAsync(cancellation);
        return Change.Done(absence);
    }
}
