using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Risk;

/// <summary>
/// How much what a plan counts with varies, as the spread of the logarithm: about the coefficient of variation while it is
/// small. The entered value is taken as the middle, as often exceeded as not. A test board has no spread but its own: the open
/// time lies evenly between its last good lap and its first bad one, or counts as the last good where no bad one is known.
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
