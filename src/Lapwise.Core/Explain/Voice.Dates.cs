namespace Lapwise.Core.Explain;

/// <summary>How days of the calendar are said.</summary>
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

    private string EnglishDate(DateOnly date) => IsUs ? $"{EnglishMonths[date.Month - 1]} {date.Day}" : $"{date.Day} {EnglishMonths[date.Month - 1]}";
}
