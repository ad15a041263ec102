using System.Globalization;
using System.Text.Json.Serialization;

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

    /// <summary>Picks the text of this voice's language.</summary>
    public string Say(string en, string es) => Language == Language.Spanish ? es : en;

    /// <summary>A number with at most <paramref name="decimals"/> decimals and this language's decimal mark; — for what is not known.</summary>
    public string Number(double value, int decimals = 2)
    {
        if (!double.IsFinite(value)) return NotKnown;
        var text = value.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
        text = text is "-0" ? "0" : text.Replace('-', '−');
        return Language == Language.Spanish ? text.Replace('.', ',') : text;
    }
}
