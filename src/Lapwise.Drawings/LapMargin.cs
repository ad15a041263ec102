using Lapwise.Core.Explain;
using Lapwise.Core.Work;

namespace Lapwise.Drawings;

/// <summary>How a lap stands against the open time and the margin that was aimed at.</summary>
public enum LapStanding { Good, Narrow, Lost, Joint }

/// <summary>How a lap's margin is judged and said, the same on drawings and sheets.</summary>
public static class LapMargin
{
    public static LapStanding Of(CoatWork work, Lap lap) => lap.Kind == LapKind.Break ? LapStanding.Joint : Of(work, work.MarginMs(lap));

    /// <summary>Good: at least the margin aimed at is left. Narrow: some is left. Lost: none.</summary>
    public static LapStanding Of(CoatWork work, long marginMs) =>
        marginMs < 0 ? LapStanding.Lost : marginMs < work.TargetMarginMs ? LapStanding.Narrow : LapStanding.Good;

    public static string Word(LapStanding standing, Voice voice) => standing switch
    {
        LapStanding.Good => voice.Say("good", "bien"),
        LapStanding.Narrow => voice.Say("narrow", "justo"),
        LapStanding.Lost => voice.Say("lost", "perdido"),
        LapStanding.Joint => voice.Say("joint", "junta"),
        _ => throw new ArgumentOutOfRangeException(nameof(standing)),
    };

    /// <summary>A margin with its sign: <c>+4:10</c>, <c>−0:30</c>.</summary>
    public static string Clock(long marginMs) => (marginMs < 0 ? "−" : "+") + Voice.Clock(Math.Abs(marginMs) / 1000.0);
}
