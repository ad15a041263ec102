using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Risk;

/// <summary>
/// How much what a plan counts with varies, as the spread of the logarithm: about the coefficient of variation while it is
/// small. The entered value is taken as the middle, as often exceeded as not; but a test board's last good lap is the lower
/// end of what it found, and counts as it stands. All 0: the day goes exactly as planned.
/// </summary>
/// <param name="Section">Pace from section to section, on top of each person's own from day to day (<see cref="Pace.DaySpread"/>).</param>
/// <param name="Mixing">Time to mix a batch.</param>
/// <param name="SheetOpenTime">Open time from a data sheet.</param>
/// <param name="GuessedOpenTime">Open time that is a guess.</param>
/// <param name="Loss">What tools, cups and edges keep.</param>
public sealed record Spreads(double Section, double Mixing, double SheetOpenTime, double GuessedOpenTime, double Loss)
{
    public static Spreads None { get; } = new(0, 0, 0, 0, 0);

    /// <summary>Taken where a crew's own is not known.</summary>
    public static Spreads Usual { get; } = new(
        Defaults.Spread.Section.Value, Defaults.Spread.Mixing.Value,
        Defaults.Spread.SheetOpenTime.Value, Defaults.Spread.GuessedOpenTime.Value, Defaults.Spread.Loss.Value);
}
