namespace WorkWindows.Engine.Evaluation;

/// <summary>The words of what is lifted.</summary>
public static partial class Wording
{
    /// <summary>What takes away what a rule would say, in a sentence; null when nothing does.</summary>
    public static string? Lifted(RuleVerdict verdict) => verdict.Lifting switch
    {
        null => null,
        { Last: { } last } exception =>
            $"Exception to '{verdict.Rule.Title}' by {exception.By} until {Of(last)}: {exception.Reason}",
        var lifting => $"'{verdict.Rule.Title}' is lifted by '{lifting.By}': {lifting.Reason}",
    };
}
