using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Properties;

/// <summary>Who is called from a property, as someone enters it: a name and a number, or null for not entered.</summary>
/// <param name="NearestAddress">The address nearest to the work.</param>
/// <param name="Sheriff">The sheriff.</param>
/// <param name="Hospital">The hospital: name, way and number.</param>
/// <param name="PoisonCentre">The poison centre.</param>
/// <param name="Utility">Whoever switches off a power line.</param>
public sealed record EmergencyForm(
    string? NearestAddress, string? Sheriff, string? Hospital, string? PoisonCentre, string? Utility)
{
    /// <summary>A line of a sheet that is read in a hurry.</summary>
    public const int LongestText = 120;

    private static readonly string Form = $"one line of at most {LongestText} characters, or nothing";

    /// <returns>The same, trimmed, where nothing is wrong.</returns>
    internal EmergencyForm Check(FieldFaults faults, string prefix = "")
    {
        return new(
            Line("nearestAddress", NearestAddress), Line("sheriff", Sheriff), Line("hospital", Hospital),
            Line("poisonCentre", PoisonCentre), Line("utility", Utility));

        string? Line(string field, string? text) => faults.Optional(
            prefix + field, text, line => line.Length <= LongestText && !line.Any(char.IsControl), Form);
    }

    internal static EmergencyForm Of(Property property) => new(
        property.NearestAddress, property.Sheriff, property.Hospital, property.PoisonCentre, property.Utility);

    internal void Enter(Property property)
    {
        (property.NearestAddress, property.Sheriff) = (NearestAddress, Sheriff);
        (property.Hospital, property.PoisonCentre, property.Utility) = (Hospital, PoisonCentre, Utility);
    }
}
