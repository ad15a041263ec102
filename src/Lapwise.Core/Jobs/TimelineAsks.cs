namespace Lapwise.Core.Jobs;

/// <summary>What was entered of days and hours, read. Times of day in minutes from midnight.</summary>
/// <param name="Start">First day on site; null: days are counted.</param>
/// <param name="Zone">IANA name; the core never resolves it.</param>
/// <param name="DaySwingK">From coolest to warmest; 0: steady.</param>
/// <param name="Fixtures">Null: what stands in the cutouts.</param>
public sealed record TimelineAsks(
    DateOnly? Start,
    string? Zone,
    int WorkFromMin,
    int WorkToMin,
    IReadOnlyList<DayOfWeek> WorkDays,
    IReadOnlyList<DateOnly> DaysOff,
    double DaySwingK,
    int WarmestAtMin,
    DateOnly? PromisedBy,
    double? LongestWithoutS,
    bool? BondTest,
    IReadOnlyList<Fixture>? Fixtures,
    IReadOnlyList<StepAsk> Steps)
{
    /// <summary>Common practice, no source: Monday to Friday, 8:00 to 16:30.</summary>
    public static readonly TimelineAsks Usual = new(
        null, null, 8 * 60, (16 * 60) + 30,
        [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday], [],
        0, 15 * 60, null, null, null, null, []);

    /// <summary>Only its shape: whether there is such a zone is for those who have the tables.</summary>
    public static bool CanBeZone(string name) =>
        name is "UTC" || (name.Contains('/') && name.Length <= 60 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '/' or '_' or '-' or '+'));
}

/// <param name="OutS">Null: the stated default.</param>
public sealed record Fixture(string Name, Doer By, double? OutS, double? BackS)
{
    /// <summary>The name of what stands in a cutout, with its top where there are several.</summary>
    public static string In(string cutout, string top, int tops) => tops > 1 ? $"{cutout} ({top})" : cutout;
}

/// <param name="TimeS">Null: reckoned.</param>
public sealed record StepAsk(SiteStep Step, double? TimeS, bool IsLeftOut);
