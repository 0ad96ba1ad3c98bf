namespace WorkWindows.Engine.Days;

/// <summary>
/// What a condition says of each day of a span: it holds, it does not, or it cannot be known because an input is
/// missing. Combined by Kleene's strong three-valued logic, so that a missing input never decides anything by itself.
/// </summary>
/// <param name="Holds">The days on which the condition is known to hold.</param>
/// <param name="Fails">The days on which it is known not to hold; disjoint from <paramref name="Holds"/>.</param>
public readonly record struct Tri(DayBits Holds, DayBits Fails)
{
    /// <summary>The days on which an input is missing and matters.</summary>
    public DayBits Unknown => ~(Holds | Fails);

    public int Length => Holds.Length;

    /// <summary>A condition that is known on every day.</summary>
    public static Tri Known(DayBits holds) => new(holds, ~holds);

    /// <summary>What is said of a single day.</summary>
    internal static Tri Of(Truth truth) => new(
        DayBits.Where(1, _ => truth == Truth.Holds), DayBits.Where(1, _ => truth == Truth.Fails));

    public static Tri operator &(Tri left, Tri right) => new(left.Holds & right.Holds, left.Fails | right.Fails);

    public static Tri operator |(Tri left, Tri right) => new(left.Holds | right.Holds, left.Fails & right.Fails);

    public static Tri operator !(Tri condition) => new(condition.Fails, condition.Holds);

    /// <summary>
    /// Holds on the days that end a run of at least this many days, and on the days that continue it. A gap in the
    /// record ends a run: until enough known days have passed the answer is unknown, or no if one of them fails.
    /// Before the span nothing is known.
    /// </summary>
    public Tri Run(int days)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(days, 1);
        var run = this;
        for (var back = 1; back < days; back++)
            run &= new Tri(Holds.Later(back, fill: false), Fails.Later(back, fill: false));
        return run;
    }

    public Truth this[int day] => Holds[day] ? Truth.Holds : Fails[day] ? Truth.Fails : Truth.Unknown;
}

/// <summary>What a condition says of one day.</summary>
public enum Truth
{
    Fails,
    Holds,
    Unknown,
}
