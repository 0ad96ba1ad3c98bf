namespace WorkWindows.Engine;

/// <summary>The version of the evaluation itself: raised whenever the same inputs would give another answer.</summary>
public static class EngineVersion
{
    public const string Current = "1";
}
