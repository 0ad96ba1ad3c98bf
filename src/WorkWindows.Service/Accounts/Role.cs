namespace WorkWindows.Service.Accounts;

/// <summary>What a person or a machine may see and do. Stored by name.</summary>
public enum Role
{
    /// <summary>Plans the work and may change everything of the organization.</summary>
    Consultant,

    CrewLead,
    CrewMember,

    /// <summary>Sees the properties that are theirs and nothing else.</summary>
    Landowner,
}
