using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using NodaTime;
using NodaTime.Text;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Imports;

/// <summary>A field that a file would change.</summary>
/// <param name="Field">The field.</param>
/// <param name="Was">What is stored; null where a value is too long to show.</param>
/// <param name="Will">What the file has.</param>
public sealed record FieldChange(string Field, string? Was, string? Will);

/// <summary>A row that a file would add or change.</summary>
/// <param name="Kind">property, parcel or task.</param>
/// <param name="Key">The organization's own name for it.</param>
/// <param name="IsNew">Whether it is not there yet.</param>
/// <param name="Fields">What would be other than it is; none of what is new.</param>
public sealed record RowChange(string Kind, string Key, bool IsNew, IReadOnlyList<FieldChange> Fields);

/// <summary>Reads what would be stored off the rows that an import has prepared and not saved.</summary>
internal static class ImportPreview
{
    /// <summary>Values that a table can show; of others it says only that they change.</summary>
    private const int LongestShown = 60;

    public static IReadOnlyList<RowChange> Of(WorkWindowsDb db)
    {
        db.ChangeTracker.DetectChanges();
        var reordered = db.ChangeTracker.Entries<TaskPrerequisite>()
            .Where(link => link.State is EntityState.Added or EntityState.Deleted)
            .Select(link => link.Entity.TaskId).ToHashSet();
        return
        [
            .. db.ChangeTracker.Entries<Property>().SelectMany(row => Of("property", row.Entity.Key, row)),
            .. db.ChangeTracker.Entries<Parcel>().SelectMany(row => Of("parcel", row.Entity.Key, row)),
            .. db.ChangeTracker.Entries<PlannedTask>().SelectMany(row => Of(
                "task", row.Entity.Key, row, reordered.Contains(row.Entity.Id) ? new("prerequisites", null, null) : null)),
        ];
    }

    private static IEnumerable<RowChange> Of(string kind, string key, EntityEntry row, FieldChange? more = null)
    {
        if (row.State == EntityState.Added)
        {
            yield return new(kind, key, IsNew: true, []);
            yield break;
        }
        List<FieldChange> fields =
        [
            .. row.Properties.Where(field => field.IsModified).Select(field => new FieldChange(
                Name(field.Metadata.Name), Text(field.OriginalValue), Text(field.CurrentValue))),
            .. more is null ? Array.Empty<FieldChange>() : [more],
        ];
        if (fields.Count > 0)
            yield return new(kind, key, IsNew: false, fields);
    }

    /// <summary>Fields are named as files name them.</summary>
    private static string Name(string property) => property switch
    {
        nameof(PlannedTask.PracticeId) => "practice",
        nameof(PlannedTask.ParcelId) => "parcel",
        nameof(PlannedTask.CrewLeadId) => "crewLead",
        nameof(PlannedTask.QuantityUnit) => "unit",
        nameof(Property.LandownerId) => "landowner",
        nameof(Parcel.BoundaryGeoJson) => "boundary",
        _ => char.ToLowerInvariant(property[0]) + property[1..],
    };

    private static string? Text(object? value) => value switch
    {
        null => "–",
        Guid => null,
        LocalDate day => LocalDatePattern.Iso.Format(day),
        string { Length: <= LongestShown } text => text,
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => null,
    };
}
