namespace WorkWindows.Engine.Safety;

/// <summary>The documents that checklist items cite, under the names that people know them by.</summary>
internal static class Documents
{
    public static SafetySource Logging(string paragraph) => new("29 CFR 1910.266", paragraph);

    public static SafetySource MichiganLogging(string paragraph) => new("Michigan Administrative Code", paragraph);

    public static SafetySource ForestService { get; } = new("USDA Forest Service, FSH 6709.11");

    public static SafetySource LabelPractice { get; } = new("Label practice");
}
