using System.Globalization;

namespace Lapwise.Core.Quantities;

/// <summary>Walks over an entry from left to right: spaces, numbers, words.</summary>
internal ref struct Scanner(string text)
{
    public int Position { get; private set; }

    public readonly string Text => text;

    public readonly bool AtEnd => Position >= text.Length;

    /// <summary>What is left to read.</summary>
    public readonly ReadOnlySpan<char> Rest => text.AsSpan(Position);

    private readonly char Here => AtEnd ? '\0' : text[Position];

    public void SkipSpaces()
    {
        while (!AtEnd && char.IsWhiteSpace(Here)) Position++;
    }

    public bool Take(char wanted)
    {
        if (Here != wanted) return false;
        Position++;
        return true;
    }

    public bool TakeDash()
    {
        if (Here is not ('-' or '−' or '–' or '‐' or '‑')) return false;
        Position++;
        return true;
    }

    /// <summary>Goes on to a further part if one starts here; feet and inches may have a dash between them: <c>8'-4"</c>.</summary>
    public bool TakePartBreak()
    {
        var before = Position;
        SkipSpaces();
        TakeDash();
        SkipSpaces();
        if (char.IsAsciiDigit(Here) || char.GetNumericValue(Here) is > 0 and < 1) return true;
        Position = before;
        return false;
    }

    /// <summary>Takes the longest of the names that stands here as a whole word; null: none does.</summary>
    public TOwner? TakeLongest<TOwner>(IEnumerable<TOwner> owners, Func<TOwner, IEnumerable<string>> names) where TOwner : class
    {
        SkipSpaces();
        var (longest, owner) = (0, default(TOwner));
        foreach (var candidate in owners)
        {
            foreach (var name in names(candidate))
            {
                var length = MatchedLength(name);
                if (length > longest) (longest, owner) = (length, candidate);
            }
        }

        Position += longest;
        return owner;
    }

    /// <summary>
    /// A number without sign: <c>96</c>, <c>96.5</c>, <c>96,5</c>, <c>1,234.5</c>, <c>1/2</c>, <c>96 1/2</c>, <c>96-1/2</c>, <c>96½</c>.
    /// </summary>
    public Read<double> Number()
    {
        SkipSpaces();
        if (TakeVulgarFraction() is { } vulgar) return vulgar;

        var start = Position;
        var digits = TakeDigits();
        if (digits.Length == 0) return Misreads.NumberMissing(text, start);
        if (TakeStroke()) return Fraction(digits, start);

        if (Decimal(digits) is not { } value) return Misreads.NumberAmbiguous(text, start, digits);
        if (!double.IsFinite(value)) return Misreads.NumberTooLong(text, start);
        return IsWhole(digits) ? WithFraction(value) : value;
    }

    private Read<double> WithFraction(double whole)
    {
        var afterWhole = Position;
        SkipSpaces();
        TakeDash();
        SkipSpaces();
        if (TakeVulgarFraction() is { } vulgar) return whole + vulgar;

        var start = Position;
        var digits = TakeDigits();
        if (digits.Length == 0 || !TakeStroke())
        {
            Position = afterWhole;
            return whole;
        }

        if (Fraction(digits, start).Failed(out var why, out var part)) return why;
        return part < 1 ? whole + part : Misreads.FractionNotUnderstood(text, start);
    }

    private Read<double> Fraction(string over, int start)
    {
        var under = TakeDigits();
        var understood = IsWhole(over) && IsWhole(under);
        var value = understood ? Parse(over) / Parse(under) : double.NaN;
        return double.IsFinite(value) ? value : Misreads.FractionNotUnderstood(text, start);
    }

    /// <summary>Digits with the marks between them; a mark that no digit follows is left.</summary>
    private string TakeDigits()
    {
        var start = Position;
        while (char.IsAsciiDigit(Here) || (Here is '.' or ',' && Position + 1 < text.Length && char.IsAsciiDigit(text[Position + 1])))
            Position++;
        return text[start..Position];
    }

    private bool TakeStroke()
    {
        if (Here is not ('/' or '⁄' or '∕') || Position + 1 >= text.Length || !char.IsAsciiDigit(text[Position + 1])) return false;
        Position++;
        return true;
    }

    private double? TakeVulgarFraction()
    {
        var value = char.GetNumericValue(Here);
        if (char.IsAsciiDigit(Here) || value is not (> 0 and < 1)) return null;
        Position++;
        return value;
    }

    /// <summary>
    /// The value of digits with marks; null where they can be read two ways. A lone comma with three digits after it
    /// (<c>1,234</c>) is a thousand in English and one and a bit in Spanish; no other shape is in doubt.
    /// </summary>
    private static double? Decimal(string digits)
    {
        var commas = digits.Count(',');
        var points = digits.Count('.');
        if (commas + points == 0) return Parse(digits);

        var last = digits.LastIndexOfAny(['.', ',']);
        var decimals = digits.Length - last - 1;
        if (commas + points == 1)
        {
            var inDoubt = commas == 1 && decimals == 3 && last is >= 1 and <= 3 && digits[0] != '0';
            return inDoubt ? null : Parse(digits.Replace(',', '.'));
        }

        // Several marks: all the same group thousands; a different last one is the decimal mark.
        var allTheSame = commas == 0 || points == 0;
        var grouped = allTheSame ? digits : digits[..last];
        var groups = grouped.Split('.', ',');
        var oneGroupingMark = !(grouped.Contains(',') && grouped.Contains('.'));
        var properGroups = groups[0].Length is >= 1 and <= 3 && groups.Skip(1).All(g => g.Length == 3);
        if (!oneGroupingMark || !properGroups) return null;
        return Parse(string.Concat(groups) + (allTheSame ? "" : "." + digits[(last + 1)..]));
    }

    private static bool IsWhole(string digits) => digits.Length > 0 && digits.All(char.IsAsciiDigit);

    private static double Parse(string digits) => double.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    /// <summary>How many characters here spell a name as a whole word; 0: they do not.</summary>
    private readonly int MatchedLength(string name)
    {
        var at = Position;
        foreach (var wanted in name)
        {
            if (wanted == ' ')
            {
                while (at < text.Length && char.IsWhiteSpace(text[at])) at++;
                continue;
            }

            if (at >= text.Length || Plain(text[at]) != Plain(wanted)) return 0;
            at++;
        }

        return EndsAWord(at) ? at - Position : 0;
    }

    private readonly bool EndsAWord(int at)
    {
        if (at >= text.Length || !char.IsLetter(text[at - 1])) return true;
        var next = text[at];
        if (char.IsLetter(next) || next is '²' or '³' or '^') return false;
        var isExponent = next is '2' or '3' && (at + 1 == text.Length || text[at + 1] is '/' || char.IsWhiteSpace(text[at + 1]));
        return !isExponent;
    }

    /// <summary>Lower case, without accents, typographic quotes as plain ones.</summary>
    private static char Plain(char c) => char.ToLowerInvariant(c) switch
    {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' => 'u',
        '′' or '’' or '‘' => '\'',
        '″' or '”' or '“' => '"',
        'º' or '˚' => '°',
        'μ' => 'µ',
        var other => other,
    };
}
