using Microsoft.EntityFrameworkCore;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Crews;

internal static class CrewNames
{
    /// <summary>What people and equipment are called, by id.</summary>
    public static Task<Dictionary<Guid, string>> NamesAsync(this WorkWindowsDb db, CancellationToken cancellation) =>
        db.People.Select(person => new { person.Id, Name = person.DisplayName })
            .Concat(db.Equipment.Select(piece => new { piece.Id, piece.Name }))
            .ToDictionaryAsync(one => one.Id, one => one.Name, cancellation);
}
