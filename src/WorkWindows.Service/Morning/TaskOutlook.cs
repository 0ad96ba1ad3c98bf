using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Engine.Evaluation;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Morning;

/// <summary>
/// What was last said of a task's coming days, so that pages over thousands of tasks need not evaluate any. It is made with
/// the decisions, at night and after every change, and is no evidence: that is the decision.
/// </summary>
public sealed class TaskOutlook : ITenantRow
{
    /// <summary>How many days it holds.</summary>
    public const int Days = 10;

    /// <summary>An outlook that nobody has looked at for longer says nothing: common practice, no source.</summary>
    public static readonly Duration LongestAge = Duration.FromHours(36);

    private const string Letters = "olcu";

    public Guid TaskId { get; init; }
    public Guid OrganizationId { get; private set; }
    public required Instant SeenAt { get; set; }

    /// <summary>The first day, in the property's zone.</summary>
    public required LocalDate FirstDay { get; set; }

    /// <summary>A letter a day: open, limited, closed, unknown.</summary>
    public required string States { get; set; }

    /// <summary>Why each day is as it is, in a few words; empty where nothing stands against it.</summary>
    public required List<string> Why { get; set; }

    /// <summary>The last day of the season that runs now; null where none runs or its end is not in sight.</summary>
    public LocalDate? LastDay { get; set; }

    /// <summary>The rule that ends it.</summary>
    public string? ClosedBy { get; set; }

    /// <summary>What was said last on an earlier day; null where nothing was.</summary>
    public LocalDate? BeforeFirstDay { get; set; }

    public string? BeforeStates { get; set; }

    /// <summary>The states of days as they are kept.</summary>
    public static string Written(IEnumerable<DayState> states) => string.Concat(states.Select(state => state switch
    {
        DayState.Open => Letters[0],
        DayState.Limited => Letters[1],
        DayState.Closed => Letters[2],
        _ => Letters[3],
    }));

    /// <returns>The state of a day; unknown where nothing was said of it.</returns>
    public static DayState Read(LocalDate? firstDay, string? states, LocalDate day)
    {
        var index = firstDay is { } first ? Period.DaysBetween(first, day) : -1;
        return index < 0 || index >= (states?.Length ?? 0) ? DayState.Unknown : states![index] switch
        {
            'o' => DayState.Open,
            'l' => DayState.Limited,
            'c' => DayState.Closed,
            _ => DayState.Unknown,
        };
    }
}

internal sealed class TaskOutlookMapping : IEntityTypeConfiguration<TaskOutlook>
{
    public void Configure(EntityTypeBuilder<TaskOutlook> builder)
    {
        builder.ToTable("task_outlooks");
        builder.HasKey(outlook => outlook.TaskId);
        builder.Property(outlook => outlook.TaskId).ValueGeneratedNever();
        builder.HasOne<PlannedTask>().WithOne().HasForeignKey<TaskOutlook>(outlook => outlook.TaskId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
