using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using WorkWindows.Service.Storage;

namespace WorkWindows.Service.Accounts;

/// <summary>Someone who works for or with the organization. The mail address is also the sign-in name.</summary>
public sealed class Person : IdentityUser<Guid>, ITenantRow
{
    public Person() => Id = Guid.CreateVersion7();

    public Guid OrganizationId { get; private set; }
    public required string DisplayName { get; set; }
    public required Role Role { get; set; }
}

internal sealed class PersonMapping :
    IEntityTypeConfiguration<Person>,
    IEntityTypeConfiguration<IdentityUserClaim<Guid>>,
    IEntityTypeConfiguration<IdentityUserLogin<Guid>>,
    IEntityTypeConfiguration<IdentityUserToken<Guid>>
{
    public void Configure(EntityTypeBuilder<Person> builder)
    {
        builder.ToTable("people");
        builder.Property(person => person.Role).HasConversion<string>();
        // The one unique index without the organization: a sign-in knows only the mail address.
        builder.HasIndex(person => person.NormalizedUserName).IsUnique().HasDatabaseName("ix_people_sign_in_name");
        builder.HasIndex(person => person.NormalizedEmail).HasDatabaseName("ix_people_normalized_email");
    }

    public void Configure(EntityTypeBuilder<IdentityUserClaim<Guid>> builder) => builder.ToTable("person_claims");

    public void Configure(EntityTypeBuilder<IdentityUserLogin<Guid>> builder) => builder.ToTable("person_logins");

    public void Configure(EntityTypeBuilder<IdentityUserToken<Guid>> builder) => builder.ToTable("person_tokens");
}
