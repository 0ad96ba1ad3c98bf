namespace WorkWindows.Engine.Land;

/// <summary>A tree species by the name that foresters write on a tally sheet.</summary>
/// <param name="Name">Its common name.</param>
/// <param name="Group">The group by which rules know it.</param>
public sealed record Species(string Name, SpeciesGroup Group);
