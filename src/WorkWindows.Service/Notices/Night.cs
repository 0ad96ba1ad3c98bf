using NodaTime;
using WorkWindows.Service.Notices.Seasons;
using WorkWindows.Engine.Chances;
using WorkWindows.Engine.Daylight;
using WorkWindows.Engine.Days;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Notices.Certificates;
using WorkWindows.Service.Notices.Choices;
using WorkWindows.Service.Notices.FollowUps;
using WorkWindows.Service.Safety.Checklists;
using WorkWindows.Service.Windows;

namespace WorkWindows.Service.Notices;

/// <summary>All that is known when the notices of one night are planned.</summary>
/// <param name="Now">The time of planning.</param>
/// <param name="Date">The organization's date, which the keys of messages name.</param>
/// <param name="Organization">Who speaks.</param>
/// <param name="Tasks">
/// The tasks that are looked at: all that are not completed, or those that something touched.
/// </param>
/// <param name="Announced">
/// The windows that people were told of and that were not stopped; none of a task that is open and not looked at.
/// </param>
/// <param name="People">Whoever may be told something, by id.</param>
/// <param name="Written">The keys of messages that were written before.</param>
public sealed record Night(
    Instant Now,
    LocalDate Date,
    Sender Organization,
    IReadOnlyList<TaskTonight> Tasks,
    IReadOnlyList<Announcement> Announced,
    IReadOnlyDictionary<Guid, Recipient> People,
    IReadOnlySet<string> Written)
{
    /// <summary>Days that a notice looks ahead, after today.</summary>
    public const int DaysAhead = 7;

    /// <summary>
    /// Landowners who have open tasks that are not looked at. They are offered days when all of theirs are, in one
    /// mail.
    /// </summary>
    public IReadOnlySet<Guid> SeenInPart { get; init; } = new HashSet<Guid>();

    /// <summary>
    /// The keys of offers and reminders that wait to be sent, and of each whether it may have left all the same.
    /// </summary>
    public IReadOnlyDictionary<string, bool> Waiting { get; init; } = new Dictionary<string, bool>();

    /// <summary>Who was told before to stop which task on which of the days that still matter.</summary>
    public IReadOnlySet<(Guid Task, Guid Person, LocalDate Day)> ToldToStop { get; init; } =
        new HashSet<(Guid, Guid, LocalDate)>();

    /// <summary>Until when people were told that the seasons of the tasks last.</summary>
    public IReadOnlyList<SeasonEnd> SeasonEnds { get; init; } = [];

    /// <summary>What people have been told that is told once.</summary>
    public IReadOnlySet<(Guid Person, string Topic)> Topics { get; init; } = new HashSet<(Guid, string)>();

    /// <summary>Work that completed work asks for; none while only some tasks are looked at.</summary>
    public IReadOnlyList<DueFollowUp> FollowUps { get; init; } = [];

    /// <summary>The certificates of people; none while only some tasks are looked at.</summary>
    public IReadOnlyList<HeldCertificate> Certificates { get; init; } = [];

    /// <summary>The checklists of the coming days that were signed, by task and day, in the order received.</summary>
    public ILookup<(Guid Task, LocalDate Day), SignedVersion> Signed { get; init; } =
        Array.Empty<SignedVersion>().ToLookup(signed => (signed.TaskId, signed.Day));

    /// <summary>When the organization works.</summary>
    public WorkShift Shift { get; init; } = WorkShift.Default;

    /// <summary>What addresses of pages begin with; null where it is not known.</summary>
    public string? SiteAddress { get; init; }
}

/// <summary>Who a notice comes from.</summary>
public sealed record Sender(string Name, string PostalAddress);

/// <param name="Id">The person.</param>
/// <param name="Name">The name that the mail is addressed to.</param>
/// <param name="Address">The mail address, or null for a person who has none.</param>
public sealed record Recipient(Guid Id, string Name, string? Address)
{
    /// <summary>How the person wants to be told.</summary>
    public Wishes Wishes { get; init; } = Wishes.Usual;

    /// <summary>Whether the person plans for the organization.</summary>
    public bool IsConsultant { get; init; }
}

/// <summary>A task as it stands tonight.</summary>
/// <param name="Task">The task.</param>
/// <param name="Evaluation">Its evaluation, at least up to <see cref="Night.DaysAhead"/> days after today.</param>
/// <param name="Today">The date in the property's zone.</param>
/// <param name="Waits">Whether another task must be done first.</param>
public sealed record TaskTonight(
    TaskSummary Task, TaskEvaluation Evaluation, LocalDate Today, bool Waits = false)
{
    /// <summary>
    /// The chances of days to come, counted when they are asked for; null where there are no past years.
    /// </summary>
    public Func<DaySpan, TaskChances?>? ChancesOf { get; init; }

    /// <summary>Who of which crew is booked on which of the coming days.</summary>
    public IReadOnlyList<(LocalDate Day, Guid Person)> Booked { get; init; } = [];

    /// <summary>Those who have said that they are on the site now, and not that they are out.</summary>
    public IReadOnlyList<Guid> OnSite { get; init; } = [];

    /// <summary>The work and its place in a line.</summary>
    public string Title => $"{Task.Practice.Name}, {Task.PropertyName}, {Task.ParcelName}";

    /// <summary>Those who are told of the task's season: its landowner and its crew lead.</summary>
    public IEnumerable<Guid> Concerned =>
        new[] { Task.LandownerId, Task.CrewLeadId }.OfType<Guid>().Distinct();

    /// <summary>
    /// The runs of workable days of the coming week that the deadline and the order of the work allow.
    /// </summary>
    public IReadOnlyList<Window> WorkableRuns()
    {
        var last = LocalDate.Min(Today.PlusDays(Night.DaysAhead), Task.Deadline ?? LocalDate.MaxIsoValue);
        var first = LocalDate.Max(Today, Task.NotBefore ?? Today);
        return Waits || last < first ? [] : [.. Evaluation.Windows(DaySpan.Between(first, last))];
    }

    /// <summary>The next day from today on for which it is scheduled or booked; null for none.</summary>
    public LocalDate? NextDay() => Booked.Select(one => (LocalDate?)one.Day).Append(Task.ScheduledOn)
        .Where(day => day >= Today).Min();

    public bool IsScheduledOn(LocalDate day) => Task.ScheduledOn == day || Booked.Any(one => one.Day == day);

    /// <summary>Those who are to be at the work on a day on which it is scheduled or booked: the lead first.</summary>
    public IEnumerable<Guid> CrewOn(LocalDate day) => new[] { Task.LeadOn(day) }.OfType<Guid>()
        .Concat(Booked.Where(one => one.Day == day).Select(one => one.Person).Order()).Distinct();

    /// <summary>Those who are at the work today, or should be.</summary>
    public IEnumerable<Guid> AtWork() => (IsScheduledOn(Today) ? CrewOn(Today) : []).Concat(OnSite).Distinct();

    public bool IsWorkable(LocalDate day) => Evaluation[day] is DayState.Open or DayState.Limited;
}
