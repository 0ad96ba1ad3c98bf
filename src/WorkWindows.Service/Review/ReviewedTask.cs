using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Review;

/// <summary>A task with what its reviews say of it.</summary>
public sealed record ReviewedTask(
    Guid Id, string PracticeId, string Parcel, Guid PropertyId, string Property, string TimeZone, Guid? LandownerId,
    Guid? CrewLeadId)
{
    /// <summary>As in 'Hinge cut, Beech Ridge'.</summary>
    public string Title => $"{PracticeCatalogue.Find(PracticeId)?.Name ?? PracticeId}, {Parcel}";

    internal static IQueryable<ReviewedTask> Of(IQueryable<PlannedTask> tasks) =>
        tasks.AsNoTracking().Select(task => new ReviewedTask(
            task.Id, task.PracticeId, task.Parcel.Name, task.Parcel.PropertyId, task.Parcel.Property.Name,
            task.Parcel.Property.TimeZone, task.Parcel.Property.LandownerId, task.CrewLeadId));
}
