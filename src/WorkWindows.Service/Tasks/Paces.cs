using WorkWindows.Engine.Stands.Hours;

namespace WorkWindows.Service.Tasks;

/// <summary>How the jobs that were finished compare with their estimates.</summary>
public sealed class Paces
{
    private readonly Dictionary<string, double> usual;
    private readonly Dictionary<(Guid CrewId, string PracticeId), CrewPractice> own;

    /// <param name="jobs">Finished jobs.</param>
    internal Paces(IReadOnlyCollection<FinishedJob> jobs)
    {
        usual = jobs.GroupBy(job => job.PracticeId).ToDictionary(
            all => all.Key, all => CrewPace.Of([.. all.Select(job => (job.EstimatedHours, job.TakenHours))]));
        own = jobs.Where(job => job.CrewId is not null).GroupBy(job => (job.CrewId!.Value, job.PracticeId)).ToDictionary(
            all => all.Key,
            all => new CrewPractice(all.Key.PracticeId, all.Count(), CrewPace.Of(
                [.. all.Select(job => (job.EstimatedHours * usual[job.PracticeId], job.TakenHours))])));
    }

    /// <returns>What estimates of a practice are multiplied by; 1 without records.</returns>
    public double Usual(string practiceId) => usual.GetValueOrDefault(practiceId, 1);

    /// <returns>What the usual hours of a practice are multiplied by when a crew does it; 1 without records of its own.</returns>
    public double Of(Guid? crewId, string practiceId) =>
        crewId is { } crew && own.TryGetValue((crew, practiceId), out var known) ? known.Pace : 1;

    /// <summary>The practices of which a crew has records of its own.</summary>
    public IEnumerable<CrewPractice> Of(Guid crewId) =>
        own.Where(one => one.Key.CrewId == crewId).Select(one => one.Value)
            .OrderBy(one => one.PracticeId, StringComparer.Ordinal);
}

/// <summary>A crew's own pace at a practice.</summary>
/// <param name="PracticeId">The practice.</param>
/// <param name="Jobs">Finished jobs that it is made of, 1 or more.</param>
/// <param name="Pace">What the usual hours of the organization are multiplied by.</param>
public sealed record CrewPractice(string PracticeId, int Jobs, double Pace);

/// <summary>A task that was finished.</summary>
/// <param name="PracticeId">Its practice.</param>
/// <param name="CrewId">The crew that did all of it; null where several had a part, or nobody's crew.</param>
/// <param name="EstimatedHours">The middle of its estimate, hours of one person.</param>
/// <param name="TakenHours">Hours of one person that were recorded, above 0.</param>
internal sealed record FinishedJob(string PracticeId, Guid? CrewId, double EstimatedHours, double TakenHours);
