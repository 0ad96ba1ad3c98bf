namespace WorkWindows.Engine.Evaluation;

/// <summary>What may be done on a day, in ascending precedence: a later member beats an earlier one.</summary>
public enum DayState
{
    /// <summary>No rule stands against the work.</summary>
    Open,

    /// <summary>The work may be done under named measures.</summary>
    Limited,

    /// <summary>An input of a closing rule is missing; never workable.</summary>
    Unknown,

    /// <summary>A rule closes the day.</summary>
    Closed,
}
