namespace WorkWindows.Planning.Cases;

/// <summary>A case that no plan can be made of; the message names what is wrong and what would be accepted.</summary>
public sealed class PlanCaseException(string message) : Exception(message);
