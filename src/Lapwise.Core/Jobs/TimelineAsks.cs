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
}

/// <param name="OutS">Null: the stated default.</param>
public sealed record Fixture(string Name, Doer By, double? OutS, double? BackS);

/// <param name="TimeS">Null: reckoned.</param>
public sealed record StepAsk(SiteStep Step, double? TimeS, bool IsLeftOut);
