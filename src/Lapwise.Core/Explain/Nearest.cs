namespace Lapwise.Core.Explain;

/// <summary>The known word a mistyped one was probably meant to be.</summary>
public static class Nearest
{
    /// <summary>Null where no word is within a third of the letters, case apart.</summary>
    public static string? To(string typed, IEnumerable<string> known)
    {
        if (typed.Length is 0 or > 60) return null;
        var nearest = known
            .Select(word => (Word: word, Steps: Steps(typed.ToLowerInvariant(), word.ToLowerInvariant())))
            .OrderBy(k => k.Steps).ThenBy(k => k.Word, StringComparer.Ordinal)
            .FirstOrDefault();
        return nearest.Word is { } found && nearest.Steps <= Math.Max(1, found.Length / 3) ? found : null;
    }

    /// <summary>A sentence that proposes the word, with a space before it; empty where there is none.</summary>
    public static string DidYouMean(Voice voice, string typed, IEnumerable<string> known) =>
        To(typed, known) is { } word ? voice.Say($" Did you mean {word}?", $" ¿Quería decir {word}?") : "";

    /// <summary>Letters to insert, drop or change (Levenshtein distance).</summary>
    private static int Steps(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[b.Length];
    }
}
