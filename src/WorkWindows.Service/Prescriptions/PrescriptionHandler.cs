using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WorkWindows.Engine.Land;
using WorkWindows.Engine.Practices;
using WorkWindows.Service.Hosting;
using WorkWindows.Service.Properties;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Prescriptions;

/// <summary>One practice of a prescription.</summary>
/// <param name="Practice">A key of the practice catalogue; at most one open task of a practice is made on a parcel.</param>
/// <param name="Quantity">How much, or null.</param>
/// <param name="QuantityUnit">acres, stems, feet, trees or hours; exactly where there is a quantity.</param>
/// <param name="CrewSize">How many people; 2 where nothing is given.</param>
public sealed record PrescribedWork(string? Practice, decimal? Quantity, string? QuantityUnit, int? CrewSize);

/// <summary>What is to be done on a parcel.</summary>
public sealed record PrescriptionForm(IReadOnlyList<PrescribedWork>? Work);

/// <summary>Makes the tasks of a prescription, in their order, with what follows in later years.</summary>
public sealed class PrescriptionHandler(WorkWindowsDb db, CurrentOrganization organization)
{
    private const int UsualCrew = 2;
    private const string Hinge = "hinge-cut";

    /// <summary>A practice that is planned on the parcel already, and not done, is not planned again.</summary>
    public async Task<Change<IReadOnlyList<PlannedTask>>> PrescribeAsync(
        Guid parcelId, PrescriptionForm form, CancellationToken cancellation)
    {
        await using var change = await OrganizationChange.BeginAsync(db, organization, cancellation);
        if (await db.Parcels.SingleOrDefaultAsync(row => row.Id == parcelId, cancellation) is not { } parcel)
            return Change.NotFound<IReadOnlyList<PlannedTask>>();
        var faults = new FieldFaults();
        var wanted = Checked(parcelId, form, faults);
        if (faults.Any)
            return Change.Refused<IReadOnlyList<PlannedTask>>(faults);
        var open = await db.PlannedTasks.Include(task => task.Prerequisites)
            .Where(task => task.ParcelId == parcelId && task.CompletedOn == null).ToListAsync(cancellation);
        var done = await db.PlannedTasks.Where(task => task.ParcelId == parcelId && task.CompletedOn != null)
            .OrderBy(task => task.CompletedOn).ToListAsync(cancellation);
        var keys = await db.PlannedTasks.Select(task => task.Key).ToHashSetAsync(cancellation);
        var rules = await db.FollowUpsAsync(cancellation);
        var made = new List<PlannedTask>();
        foreach (var work in wanted.Where(work => !open.Exists(task => task.PracticeId == work.Practice)))
        {
            var task = Add(work.Practice!, work.Quantity, work.QuantityUnit, work.CrewSize ?? UsualCrew, null);
            Follow(task, done, rules);
            made.Add(task);
        }
        foreach (var cut in made.ToList())
        {
            foreach (var rule in rules.Where(rule => rule.After.Id == cut.PracticeId && rule.Practice != rule.After))
            {
                // What was prescribed by itself, now or before, is the work that follows.
                if (made.Concat(open).FirstOrDefault(task => task.PracticeId == rule.Practice.Id && task.FollowsId is null) is { } own)
                {
                    own.FollowsId = cut.Id;
                    if (own.Prerequisites.All(link => link.PrerequisiteId != cut.Id))
                        own.Prerequisites.Add(new() { TaskId = own.Id, PrerequisiteId = cut.Id });
                }
                else
                {
                    made.Add(Add(rule.Practice.Id, cut.Quantity, cut.QuantityUnit, cut.CrewSize, cut.Id));
                }
            }
        }
        PutInOrder([.. open.Where(task => task.FollowsId is null), .. made.Where(task => task.FollowsId is null)], made);
        if (parcel.SiteFlags.Contains(SiteFlag.DeepCover))
            await WaitForNearFoodAsync(parcel, made, cancellation);
        await db.SaveChangesAsync(cancellation);
        await change.CommitAsync(cancellation);
        return Change.Done<IReadOnlyList<PlannedTask>>(made);

        PlannedTask Add(string practice, decimal? quantity, string? unit, int crewSize, Guid? follows)
        {
            var key = $"{parcel.Key}-{practice}";
            for (var number = 2; !keys.Add(key); number++)
                key = $"{parcel.Key}-{practice}-{number}";
            var task = new PlannedTask
            {
                Key = key,
                ParcelId = parcelId,
                PracticeId = practice,
                CrewSize = crewSize,
                Quantity = quantity,
                QuantityUnit = unit,
                FollowsId = follows,
            };
            if (follows is { } first)
                task.Prerequisites.Add(new() { TaskId = task.Id, PrerequisiteId = first });
            db.Add(task);
            return task;
        }
    }

    /// <summary>Work that something done on the parcel asks for follows it, and has its dates.</summary>
    private static void Follow(PlannedTask task, List<PlannedTask> done, ImmutableArray<FollowUp> rules)
    {
        foreach (var before in done)
        {
            if (rules.FirstOrDefault(rule => rule.After.Id == before.PracticeId && rule.Practice.Id == task.PracticeId) is { } rule
                && FollowUps.Answer(rule, before, done) is null)
            {
                task.FollowsId = before.Id;
                (task.NotBefore, task.Deadline) = rule.Due(before.CompletedOn!.Value);
                return;
            }
        }
    }

    /// <summary>Common practice, no source: bedding near food before deep cover. Nothing waits for what is new, so no circle.</summary>
    private async Task WaitForNearFoodAsync(Parcel parcel, List<PlannedTask> made, CancellationToken cancellation)
    {
        var others = await db.PlannedTasks.Include(task => task.Parcel).Where(task => task.CompletedOn == null
            && task.PracticeId == Hinge && task.Parcel.PropertyId == parcel.PropertyId && task.ParcelId != parcel.Id).ToListAsync(cancellation);
        foreach (var hinge in made.Where(task => task.PracticeId == Hinge))
        {
            foreach (var first in others.Where(task => task.Parcel.SiteFlags.Contains(SiteFlag.NearFood)))
                hinge.Prerequisites.Add(new() { TaskId = hinge.Id, PrerequisiteId = first.Id });
        }
    }

    private static IReadOnlyList<PrescribedWork> Checked(Guid parcelId, PrescriptionForm form, FieldFaults faults)
    {
        if (form.Work is not { Count: > 0 } work)
        {
            faults.Add("work", null, "at least one practice");
            return [];
        }
        for (var index = 0; index < work.Count; index++)
        {
            if (work.Take(index).Any(earlier => earlier?.Practice == work[index]?.Practice && earlier?.Practice is not null))
                faults.AddSentence($"work[{index}].practice", $"'{work[index].Practice}' stands twice: give it once, with all of it.");
            var one = new FieldFaults();
            var item = work[index] ?? new(null, null, null, null);
            new TaskForm(
                "new", parcelId, item.Practice, item.Quantity, item.QuantityUnit, item.CrewSize ?? UsualCrew, null, null,
                null, null).Check(one);
            foreach (var (field, messages) in one.Errors)
            {
                foreach (var message in messages)
                    faults.AddSentence($"work[{index}].{field}", message);
            }
        }
        return work;
    }

    /// <summary>New work waits for what comes first on the parcel, and what is planned there for new work.</summary>
    private static void PutInOrder(List<PlannedTask> open, List<PlannedTask> made)
    {
        foreach (var later in open)
        {
            var practice = PracticeCatalogue.Find(later.PracticeId)!;
            foreach (var first in open.Where(task => task.Id != later.Id
                && Sequence.All.Any(order => order.Later == practice && order.First.Id == task.PracticeId)))
            {
                if ((made.Contains(first) || made.Contains(later))
                    && later.Prerequisites.All(link => link.PrerequisiteId != first.Id) && !Waits(first, later.Id))
                {
                    later.Prerequisites.Add(new() { TaskId = later.Id, PrerequisiteId = first.Id });
                }
            }
        }

        // Somebody may have set the opposite order by hand: that stays, and no circle is closed.
        bool Waits(PlannedTask task, Guid forId) => task.Prerequisites.Any(link => link.PrerequisiteId == forId
            || (open.Find(one => one.Id == link.PrerequisiteId) is { } first && Waits(first, forId)));
    }
}
