using System.Globalization;

namespace Lapwise.Core.Explain;

/// <summary>How days of the calendar and times of a day are said.</summary>
public sealed partial record Voice
{
    private static readonly string[] EnglishDays = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
    private static readonly string[] SpanishDays = ["dom", "lun", "mar", "mié", "jue", "vie", "sáb"];
    private static readonly string[] EnglishMonths = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    private static readonly string[] SpanishMonths = ["ene", "feb", "mar", "abr", "may", "jun", "jul", "ago", "sep", "oct", "nov", "dic"];

    /// <summary>A day near at hand: <c>Mon Dec 7</c>, <c>lun 7 dic</c>.</summary>
    public string WeekDay(DateOnly date) => Together(Say($"{EnglishDays[(int)date.DayOfWeek]} {EnglishDate(date)}", $"{SpanishDays[(int)date.DayOfWeek]} {date.Day} {SpanishMonths[date.Month - 1]}"));

    /// <summary>A day of a letter or a label: <c>Dec 7, 2026</c>, <c>7 dic 2026</c>.</summary>
    public string Date(DateOnly date) => Together(Say($"{EnglishDate(date)}{(IsUs ? "," : "")} {date.Year}", $"{date.Day} {SpanishMonths[date.Month - 1]} {date.Year}"));

    /// <summary>A time of day, twelve hours in US English and twenty-four elsewhere: <c>2:05 pm</c>, <c>14:05</c>.</summary>
    public string Hour(DateTime at) => Hour(at, "h:mm tt", "H:mm");

    /// <summary>A time of any day, in hours from midnight.</summary>
    public string HourOfDay(double hours) => Hour(DateTime.UnixEpoch.AddMinutes(Math.Round(hours * 60)));

    /// <summary>To the second, for what was marked: <c>2:05:30 pm</c>, <c>14:05:30</c>.</summary>
    public string HourToTheSecond(DateTime at) => Hour(at, "h:mm:ss tt", "H:mm:ss");

    /// <summary>A whole hour where there is little room: <c>2 pm</c>, <c>14</c>.</summary>
    public string BareHour(DateTime at) => Hour(at, "h tt", "%H");

    /// <summary>A moment of a record: <c>Dec 7, 2026, 2:05 pm</c>, <c>7 dic 2026, 14:05</c>.</summary>
    public string Moment(DateTime at) => $"{Date(DateOnly.FromDateTime(at))}, {Hour(at)}";

    /// <summary>Whether two words that follow each other belong to one date: <c>Mon Dec</c>, <c>Dec 7</c>, <c>7, 2026</c>, <c>7 dic</c>, <c>dic 2026</c>.</summary>
    internal static bool IsWithinDate(ReadOnlySpan<char> before, ReadOnlySpan<char> word)
    {
        var then = word.TrimEnd(",;.:)");
        if (IsDay(before)) return IsMonth(then) || IsNumber(then);
        return IsMonth(before) ? IsNumber(then) : IsNumber(before.TrimEnd(',')) && (IsMonth(then) || (before[^1] == ',' && then.Length == 4 && IsNumber(then)));
    }

    private static bool IsDay(ReadOnlySpan<char> word) => IsOneOf(EnglishDays, word) || IsOneOf(SpanishDays, word);
    private static bool IsMonth(ReadOnlySpan<char> word) => IsOneOf(EnglishMonths, word) || IsOneOf(SpanishMonths, word);
    private static bool IsNumber(ReadOnlySpan<char> word) => word.Length is > 0 and <= 4 && word.IndexOfAnyExceptInRange('0', '9') < 0;

    private static bool IsOneOf(string[] names, ReadOnlySpan<char> word)
    {
        foreach (var name in names)
            if (word.SequenceEqual(name)) return true;
        return false;
    }

    private string Hour(DateTime at, string twelve, string twentyFour) => Together(IsUs && Language == Language.English
        ? at.ToString(twelve, CultureInfo.InvariantCulture).ToLowerInvariant()
        : at.ToString(twentyFour, CultureInfo.InvariantCulture));

    private string EnglishDate(DateOnly date) => IsUs ? $"{EnglishMonths[date.Month - 1]} {date.Day}" : $"{date.Day} {EnglishMonths[date.Month - 1]}";
}
