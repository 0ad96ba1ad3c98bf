namespace WorkWindows.Engine.Rules.Reading;

/// <summary>Finds the word that somebody meant to write.</summary>
internal static class NearWords
{
    // A letter left out, doubled or wrong; two letters swapped count as two.
    private const int MostEdits = 2;
    private const int LettersPerEdit = 3;

    /// <summary>The accepted words, and which of them looks like the one written.</summary>
    public static string ListWithNearest(string? written, IEnumerable<string> accepted)
    {
        string[] words = [.. accepted];
        var nearest = words.Select(word => (Word: word, Edits: Edits(written ?? "", word)))
            .Where(near => near.Edits <= Math.Min(MostEdits, near.Word.Length / LettersPerEdit))
            .OrderBy(near => near.Edits).FirstOrDefault().Word;
        return string.Join(", ", words) + (nearest is null ? "" : $"; did you mean '{nearest}'?");
    }

    /// <summary>How many letters must be put in, left out or replaced to make one word of the other.</summary>
    private static int Edits(string from, string to)
    {
        var row = Enumerable.Range(0, to.Length + 1).ToArray();
        for (var i = 1; i <= from.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= to.Length; j++)
            {
                var replaced = diagonal + (from[i - 1] == to[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[to.Length];
    }
}
