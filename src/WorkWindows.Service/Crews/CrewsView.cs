using Microsoft.EntityFrameworkCore;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

/// <summary>A crew as the page shows it.</summary>
public sealed record CrewCard(Crew Crew, string Lead, IReadOnlyList<string> Others);

/// <summary>Days off as the page shows them.</summary>
public sealed record AbsenceRow(Guid Id, string Of, LocalDate First, LocalDate Last, string? Reason);

/// <summary>A certificate as the page shows it.</summary>
public sealed record CertificateRow(Guid PersonId, string Person, string Title, LocalDate ValidUntil);

/// <summary>Somebody who may be of a crew.</summary>
public sealed record Worker(Guid Id, string Name, bool MayLead);

/// <summary>Crews, equipment and who is off from a day on.</summary>
public sealed record CrewsView(
    IReadOnlyList<CrewCard> Crews, IReadOnlyList<Equipment> Equipment, IReadOnlyList<AbsenceRow> Absences,
    IReadOnlyList<Worker> Workers, IReadOnlyList<CertificateRow> Certificates)
{
    public static async Task<CrewsView> ReadAsync(WorkWindowsDb db, LocalDate from, CancellationToken cancellation)
    {
        var workers = await db.People.AsNoTracking().Where(person => person.Role != Role.Landowner)
            .OrderBy(person => person.DisplayName)
            .Select(person => new Worker(
                person.Id, person.DisplayName, person.Role == Role.CrewLead || person.Role == Role.Consultant))
            .ToListAsync(cancellation);
        var crews = await db.Crews.AsNoTracking().Include(crew => crew.Members).OrderBy(crew => crew.Name)
            .ToListAsync(cancellation);
        var equipment = await db.Equipment.AsNoTracking().OrderBy(piece => piece.Name).ToListAsync(cancellation);
        var absences = await db.Absences.AsNoTracking().Where(row => row.LastDay >= from)
            .OrderBy(row => row.FirstDay).ThenBy(row => row.Id).ToListAsync(cancellation);
        var held = await db.Certificates.AsNoTracking().OrderBy(one => one.ValidUntil).ThenBy(one => one.Title)
            .ToListAsync(cancellation);
        var names = workers.Select(worker => (worker.Id, worker.Name))
            .Concat(crews.Select(crew => (crew.Id, crew.Name)))
            .Concat(equipment.Select(piece => (piece.Id, piece.Name))).ToDictionary(one => one.Id, one => one.Name);
        return new(
            crews.ConvertAll(crew => new CrewCard(
                crew, names.GetValueOrDefault(crew.LeadId, "somebody who has left"),
                [.. crew.Members.Where(member => member.PersonId != crew.LeadId)
                    .Select(member => names.GetValueOrDefault(member.PersonId)).OfType<string>().Order(StringComparer.Ordinal)])),
            equipment,
            absences.ConvertAll(row => new AbsenceRow(
                row.Id, names.GetValueOrDefault((row.PersonId ?? row.CrewId ?? row.EquipmentId)!.Value, "somebody who has left"),
                row.FirstDay, row.LastDay, row.Reason)),
            workers,
            [.. held.Where(one => names.ContainsKey(one.PersonId))
                .Select(one => new CertificateRow(one.PersonId, names[one.PersonId], one.Title, one.ValidUntil))]);
    }
}
