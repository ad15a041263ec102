using System.Text;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Explain;

/// <summary>The gaps between a number and its unit and within a date, where no line may end.</summary>
public static class UnitGap
{
    /// <summary>A space at which a line does not end.</summary>
    public const char NoBreak = '\u00A0';

    /// <summary>Makes the gaps of a text such that no line ends there; nothing else is changed.</summary>
    public static string Keep(string text)
    {
        StringBuilder? kept = null;
        var before = 0;
        for (var gap = text.IndexOf(' ', StringComparison.Ordinal); gap > 0; gap = text.IndexOf(' ', gap + 1))
        {
            var after = text.IndexOf(' ', gap + 1);
            if (Holds(text.AsSpan(before..gap), text.AsSpan((gap + 1)..(after < 0 ? text.Length : after)))) (kept ??= new(text))[gap] = NoBreak;
            before = gap + 1;
        }

        return kept?.ToString() ?? text;
    }

    /// <summary>Ordinary spaces again, where lines are ended by other means or a program reads on.</summary>
    public static string Plain(string text) => text.Replace(NoBreak, ' ');

    // Dates are Voice's to know. "6.9 m²," and "2 fl oz" stay together, as do 8' 4 1/2", "9:53 am", "12 min 30 s", "2 : 1", "4 × 48" and a letter with what it stands for, "h 2".
    private static bool Holds(ReadOnlySpan<char> before, ReadOnlySpan<char> word)
    {
        if (before.IsEmpty || word.IsEmpty) return false;
        if (Voice.IsWithinDate(before, word)) return true;
        if (char.IsAsciiDigit(before[^1]) || before is "fl") return IsUnit(word) || IsFraction(word) || IsBetweenNumbers(word);
        if (before[^1] == '\'' && before.Length > 1 && char.IsAsciiDigit(before[^2])) return char.IsAsciiDigit(word[0]);
        return char.IsAsciiDigit(word[0]) && (before is "min" || IsBetweenNumbers(before) || (before.Length == 1 && char.IsLetter(before[0])));
    }

    private static bool IsBetweenNumbers(ReadOnlySpan<char> word) => word is ":" or "×";

    private static bool IsFraction(ReadOnlySpan<char> word) => word.IndexOf('/') is > 0 and var stroke && word[..stroke].IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool IsUnit(ReadOnlySpan<char> word)
    {
        var bare = word.TrimEnd(",;.:)");
        var slash = bare.IndexOf('/');
        return (slash > 0 ? bare[..slash] : bare) is "%" or "°C" or "°F" or "K" or "mm" or "cm" or "m" or "m²" or "m³" or "µm" or "in" or "ft" or "ft²" or "ft³" or "mil"
            or "mL" or "L" or "fl" or "oz" or "gal" or "g" or "kg" or "lb" or "kJ" or "J" or "W" or "ppm" or "s" or "min" or "h" or "d" or "am" or "pm"
            || Currency.IsCode(bare);
    }
}
