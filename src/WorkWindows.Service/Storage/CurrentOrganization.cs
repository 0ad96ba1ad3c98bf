namespace WorkWindows.Service.Storage;

/// <summary>
/// The organization that this request or job works for. Until it is set, the database shows no row of any.
/// </summary>
public sealed class CurrentOrganization
{
    /// <summary>The PostgreSQL setting that row-level security compares with.</summary>
    public const string Setting = "workwindows.organization";

    public Guid? Id { get; private set; }

    /// <exception cref="InvalidOperationException">The scope already works for another organization.</exception>
    public void Set(Guid organizationId)
    {
        if (Id is { } id && id != organizationId)
            throw new InvalidOperationException($"This scope already works for organization {id}.");
        Id = organizationId;
    }
}
