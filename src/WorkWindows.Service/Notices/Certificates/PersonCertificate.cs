using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using NodaTime;
using WorkWindows.Service.Accounts;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Notices.Certificates;

/// <summary>A training, licence or certificate of a person that ends on a day, such as first aid.</summary>
public sealed class PersonCertificate : ITenantRow
{
    public Guid Id { get; init; } = Guid.CreateVersion7();
    public Guid OrganizationId { get; private set; }
    public required Guid PersonId { get; init; }
    public required string Title { get; set; }

    /// <summary>The last day on which it is valid.</summary>
    public required LocalDate ValidUntil { get; set; }
}

internal sealed class PersonCertificateMapping : IEntityTypeConfiguration<PersonCertificate>
{
    public void Configure(EntityTypeBuilder<PersonCertificate> builder)
    {
        builder.ToTable("person_certificates");
        builder.HasIndex(certificate => new { certificate.PersonId, certificate.Title }).IsUnique();
        builder.HasOne<Person>().WithMany().HasForeignKey(certificate => certificate.PersonId)
            .OnDelete(DeleteBehavior.Cascade);
    }
}
