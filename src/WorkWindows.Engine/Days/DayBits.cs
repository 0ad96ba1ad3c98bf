using System.Numerics;

namespace WorkWindows.Engine.Days;

/// <summary>A set of days of one span, one bit a day (366 days are six 64-bit words). Immutable.</summary>
/// <remarks>Operands of a binary operation must have the same length; bits past the length are always zero.</remarks>
public readonly struct DayBits : IEquatable<DayBits>
{
    private const int WordBits = 64;
    private readonly ulong[]? words;

    private DayBits(ulong[] words, int length)
    {
        this.words = words;
        Length = length;
    }

    /// <summary>The number of days in the span, whether in the set or not.</summary>
    public int Length { get; }

    private ReadOnlySpan<ulong> Words => words;

    public static DayBits None(int length) => new(new ulong[WordsFor(length)], length);

    public static DayBits All(int length)
    {
        var words = new ulong[WordsFor(length)];
        Array.Fill(words, ulong.MaxValue);
        return Trimmed(words, length);
    }

    /// <summary>The days whose index satisfies a condition.</summary>
    public static DayBits Where(int length, Func<int, bool> contains)
    {
        var words = new ulong[WordsFor(length)];
        for (var day = 0; day < length; day++)
        {
            if (contains(day))
                words[day / WordBits] |= 1UL << (day % WordBits);
        }
        return new(words, length);
    }

    /// <summary>The days whose value lies below a bound, and those whose value lies above; NaN is in neither.</summary>
    /// <param name="values">One a day.</param>
    /// <param name="bound">The bound.</param>
    /// <param name="countsAsLow">Whether a value at the bound counts as below it, otherwise as above.</param>
    public static (DayBits Low, DayBits High) Around(ReadOnlySpan<double> values, double bound, bool countsAsLow)
    {
        var length = values.Length;
        var (low, high) = (new ulong[WordsFor(length)], new ulong[WordsFor(length)]);
        for (var day = 0; day < length; day++)
        {
            var bit = 1UL << (day % WordBits);
            var value = values[day];
            if (value < bound || (countsAsLow && value == bound))
                low[day / WordBits] |= bit;
            else if (value >= bound)
                high[day / WordBits] |= bit;
        }
        return (new(low, length), new(high, length));
    }

    /// <summary>The days from one index to another, both included; indices outside the span are cut off.</summary>
    public static DayBits Range(int length, int first, int last)
    {
        var (from, to) = (Math.Max(first, 0), Math.Min(last, length - 1));
        var words = new ulong[WordsFor(length)];
        for (var word = from / WordBits; from <= to && word <= to / WordBits; word++)
        {
            var low = Math.Max(from - word * WordBits, 0);
            var high = Math.Min(to - word * WordBits, WordBits - 1);
            words[word] = (ulong.MaxValue << low) & (ulong.MaxValue >> (WordBits - 1 - high));
        }
        return new(words, length);
    }

    public bool this[int day] => day >= 0 && day < Length && (words![day / WordBits] >> (day % WordBits) & 1) != 0;

    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in Words)
                count += BitOperations.PopCount(word);
            return count;
        }
    }

    public bool IsEmpty => Words.IndexOfAnyExcept(0UL) < 0;

    public static DayBits operator |(DayBits left, DayBits right) => Combine(left, right, static (a, b) => a | b);

    public static DayBits operator &(DayBits left, DayBits right) => Combine(left, right, static (a, b) => a & b);

    public static DayBits operator ~(DayBits set)
    {
        var words = new ulong[set.Words.Length];
        for (var i = 0; i < words.Length; i++)
            words[i] = ~set.words![i];
        return Trimmed(words, set.Length);
    }

    /// <summary>The days of this set that are not in the other.</summary>
    public DayBits Except(DayBits other) => Combine(this, other, static (a, b) => a & ~b);

    /// <summary>
    /// The set moved towards later days. The days that come in at the start of the span, about which the set says
    /// nothing, are in the result only when <paramref name="fill"/> says so.
    /// </summary>
    public DayBits Later(int days, bool fill)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(days);
        var moved = new ulong[Words.Length];
        var (wordShift, bitShift) = Math.DivRem(days, WordBits);
        for (var i = moved.Length - 1; i >= wordShift; i--)
        {
            moved[i] = words![i - wordShift] << bitShift;
            if (bitShift > 0 && i > wordShift)
                moved[i] |= words[i - wordShift - 1] >> (WordBits - bitShift);
        }
        var result = Trimmed(moved, Length);
        return fill ? result | Range(Length, 0, days - 1) : result;
    }

    /// <summary>The part of the set from one day on, as a set of a shorter span.</summary>
    public DayBits Slice(int first, int length)
    {
        var set = this;
        return Where(length, day => set[first + day]);
    }

    /// <summary>The longest runs of consecutive days in the set, as first and last index, ascending.</summary>
    public IEnumerable<(int First, int Last)> Runs()
    {
        for (var day = 0; day < Length; day++)
        {
            if (!this[day])
                continue;
            var first = day;
            while (day + 1 < Length && this[day + 1])
                day++;
            yield return (first, day);
        }
    }

    /// <summary>The first day of the set at or after an index, or null.</summary>
    public int? FirstFrom(int day)
    {
        for (var d = Math.Max(day, 0); d < Length; d++)
        {
            if (this[d])
                return d;
        }
        return null;
    }

    public bool Equals(DayBits other) => Length == other.Length && Words.SequenceEqual(other.Words);

    public override bool Equals(object? obj) => obj is DayBits other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var word in Words)
            hash.Add(word);
        return hash.ToHashCode();
    }

    public static bool operator ==(DayBits left, DayBits right) => left.Equals(right);

    public static bool operator !=(DayBits left, DayBits right) => !left.Equals(right);

    private static int WordsFor(int length) => (length + WordBits - 1) / WordBits;

    private static DayBits Trimmed(ulong[] words, int length)
    {
        if (length % WordBits is > 0 and var used)
            words[^1] &= ulong.MaxValue >> (WordBits - used);
        return new(words, length);
    }

    private static DayBits Combine(DayBits left, DayBits right, Func<ulong, ulong, ulong> combine)
    {
        if (left.Length != right.Length)
            throw new ArgumentException($"Sets of {left.Length} and {right.Length} days cannot be combined.");
        var words = new ulong[left.Words.Length];
        for (var i = 0; i < words.Length; i++)
            words[i] = combine(left.words![i], right.words![i]);
        return new(words, left.Length);
    }
}
