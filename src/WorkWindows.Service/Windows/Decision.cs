using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Storage;
using WorkWindows.Service.Tasks;

namespace WorkWindows.Service.Windows;

/// <summary>The outcome of one evaluation of one task. Only ever added: the application may not change it.</summary>
public sealed class Decision : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid TaskId { get; init; }
    public required Instant EvaluatedAt { get; init; }
    public required LocalDate FirstDay { get; init; }

    /// <summary>The last day evaluated, included.</summary>
    public required LocalDate LastDay { get; init; }

    public required string Hash { get; init; }

    /// <summary>The exact bytes of the decision's JSON in UTF-8: a replay must give the same.</summary>
    public required byte[] Content { get; init; }

    public required string SnapshotHash { get; init; }

    /// <summary>The packs that were stacked, national first.</summary>
    public required List<string> PackHashes { get; init; }
}

internal sealed class DecisionMapping : IEntityTypeConfiguration<Decision>
{
    public void Configure(EntityTypeBuilder<Decision> builder)
    {
        builder.ToTable("decisions");
        builder.HasIndex(decision => new { decision.OrganizationId, decision.TaskId, decision.EvaluatedAt });
        builder.HasOne<PlannedTask>().WithMany().HasForeignKey(decision => decision.TaskId)
            .OnDelete(DeleteBehavior.Restrict);
    }
}
