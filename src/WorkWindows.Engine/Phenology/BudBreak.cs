using NodaTime;

namespace WorkWindows.Engine.Phenology;

/// <summary>When half of a tree's buds have broken, by three thermal-time models a species.</summary>
/// <param name="Species">English name.</param>
/// <param name="FromMarch">Base 4 °C from 22 March, the best of the three for most species.</param>
/// <param name="FromJanuary">Base 0 °C from 1 January.</param>
/// <param name="FromJanuaryBase5">Base 5 °C from 1 January.</param>
/// <remarks>
/// Fitted to Harvard Forest data set HF003 (CC BY; 42.54° N 72.20° W), 1990–2001: twelve springs of one site,
/// errors in the sample of 2 to 6 days. Source: docs/rules/leaf-out.md.
/// </remarks>
public sealed record BudBreak(
    string Species, ThermalTime FromMarch, ThermalTime FromJanuary, ThermalTime FromJanuaryBase5)
{
    public static BudBreak BlackCherry { get; } = Of("black cherry", 62, 208, 58);

    public static BudBreak TremblingAspen { get; } = Of("trembling aspen", 102, 300, 100);

    public static BudBreak SugarMaple { get; } = Of("sugar maple", 116, 326, 100);

    public static BudBreak PaperBirch { get; } = Of("paper birch", 120, 328, 100);

    public static BudBreak RedMaple { get; } = Of("red maple", 144, 348, 120);

    public static BudBreak AmericanBeech { get; } = Of("American beech", 150, 376, 134);

    public static BudBreak NorthernRedOak { get; } = Of("northern red oak", 164, 394, 146);

    public static BudBreak WhiteAsh { get; } = Of("white ash", 160, 392, 134);

    public static BudBreak BlackOak { get; } = Of("black oak", 188, 426, 162);

    public static BudBreak WhiteOak { get; } = Of("white oak", 198, 444, 172);

    public static BudBreak BlackGum { get; } = Of("black gum", 238, 490, 208);

    private static BudBreak Of(string species, double marchNeedC, double januaryNeedC, double januaryBase5NeedC) => new(
        species,
        new(new AnnualDate(3, 22), 4, marchNeedC),
        new(new AnnualDate(1, 1), 0, januaryNeedC),
        new(new AnnualDate(1, 1), 5, januaryBase5NeedC));
}
