using System.Globalization;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

namespace Lapwise.Core.Explain;

/// <summary>The languages the product speaks.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Language>))]
public enum Language
{
    [JsonStringEnumMemberName("en")] English,
    [JsonStringEnumMemberName("es")] Spanish,
}

/// <summary>The units a person works in. It changes what is shown, never what is stored.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<UnitSystem>))]
public enum UnitSystem { Us, Metric }

/// <summary>A sentence that can be said in either language and in either unit system.</summary>
public delegate string Phrase(Voice voice);

/// <summary>
/// How the program speaks to one person: language, units and decimal mark.
/// Every text of the product passes through <see cref="Say"/>, so a text without its Spanish does not compile.
/// </summary>
public sealed partial record Voice(Language Language, UnitSystem Units)
{
    public static readonly Voice Default = new(Language.English, UnitSystem.Us);

    /// <summary>
    /// Numbers stay on one line with their units: for a page, which ends lines wherever there is a space. Without it spaces are
    /// ordinary ones, for what is printed in columns, kept in documents and read on by programs.
    /// </summary>
    public bool KeepsUnits { get; init; }

    /// <summary>Picks the text of this voice's language.</summary>
    public string Say(string en, string es) => Kept(Language == Language.Spanish ? es : en);

    /// <summary>Words between which no line ends on a page.</summary>
    private string Together(string words) => KeepsUnits ? words.Replace(' ', UnitGap.NoBreak) : words;

    /// <summary>A text as this voice shows it.</summary>
    public string Kept(string text) => KeepsUnits ? UnitGap.Keep(text) : text;

    /// <summary>A formula in symbols with this language's decimal mark, and with what stands below the line in this language.</summary>
    public string Formula(string symbols) => Language != Language.Spanish ? symbols
        : WordsBelow().Replace(DecimalPoint().Replace(symbols, ","), below => SpanishBelow(below.Value));

    // A letter below stands for itself in either language; p_sat is saturado too.
    private static string SpanishBelow(string word) => word switch
    {
        "in" => "entra",
        "left" => "queda",
        "max" => "máx",
        "min" => "mín",
        "out" => "sale",
        "shelf" => "estante",
        _ => word,
    };

    [GeneratedRegex(@"(?<=[0-9])\.(?=[0-9])", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex DecimalPoint();

    [GeneratedRegex("(?<=_)[a-z]{2,}", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex WordsBelow();

    /// <summary>Things in a row, the last after an <c>and</c>.</summary>
    public string List(IReadOnlyList<string> things) =>
        things.Count < 2 ? string.Concat(things) : string.Join(", ", things.SkipLast(1)) + Say(" and ", " y ") + things[^1];

    /// <summary>The same of things that may be very many: the first of them, and how many more.</summary>
    public string Some(IReadOnlyList<string> things, int most = 8) =>
        List(things.Count <= most ? things : [.. things.Take(most), Say($"{things.Count - most} more", $"{things.Count - most} más")]);

    /// <summary>How many there are of a thing, in the singular where there is one.</summary>
    public string Count(int count, (string One, string Many) en, (string One, string Many) es) =>
        Number(count, 0) + " " + Say(count == 1 ? en.One : en.Many, count == 1 ? es.One : es.Many);

    /// <summary>A number with at most <paramref name="decimals"/> decimals and this language's decimal mark; — for what is not known.</summary>
    public string Number(double value, int decimals = 2)
    {
        if (!double.IsFinite(value)) return NotKnown;
        var text = value.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
        text = text is "-0" ? "0" : text.Replace('-', '−');
        return Language == Language.Spanish ? text.Replace('.', ',') : text;
    }
}
