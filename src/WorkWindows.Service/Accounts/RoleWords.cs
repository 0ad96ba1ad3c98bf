using System.Text.Json;
using WorkWindows.Service.Hosting;

namespace WorkWindows.Service.Accounts;

/// <summary>
/// The roles as they stand in JSON. A role that is not said is never one: the first of them may do everything.
/// </summary>
internal static class RoleWords
{
    private static readonly Dictionary<string, Role> Roles =
        Enum.GetValues<Role>().ToDictionary(role => JsonNamingPolicy.KebabCaseLower.ConvertName($"{role}"));

    /// <summary>What a machine may be, which owns no land.</summary>
    private static readonly string OfMachines =
        string.Join(", ", Roles.Where(word => word.Value != Role.Landowner).Select(word => word.Key));

    private static readonly string All = string.Join(", ", Roles.Keys);

    /// <returns>The role of a person; the least one, with a fault, where none of the words is given.</returns>
    public static Role OfPerson(string? word, FieldFaults faults) =>
        Read(word, faults, _ => true, $"one of: {All}");

    /// <returns>The role of a machine; the least one, with a fault, where none of the words is given.</returns>
    public static Role OfMachine(string? word, FieldFaults faults) =>
        Read(word, faults, role => role != Role.Landowner, $"one of: {OfMachines}. A machine owns no land");

    private static Role Read(string? word, FieldFaults faults, Func<Role, bool> isAccepted, string accepted) =>
        faults.Required("role", word, text => Roles.TryGetValue(text, out var role) && isAccepted(role), accepted)
            is { Length: > 0 } known ? Roles[known] : Role.Landowner;
}
