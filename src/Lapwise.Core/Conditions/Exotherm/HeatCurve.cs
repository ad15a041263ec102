using Lapwise.Core.Explain;

namespace Lapwise.Core.Conditions.Exotherm;

/// <summary>A batch heating itself in its vessel, with the moment to have poured it out.</summary>
public static class HeatCurve
{
    public static Curve Of(BatchHeat heat)
    {
        var batch = heat.InVessel;
        var life = batch.Seconds;
        // A cool small batch reacts on for days: what follows its life is shown for half as long again, and its peak where that is near.
        var end = double.IsFinite(life) ? Math.Max(1.5 * life, Math.Min(batch.PeakSeconds, 2.5 * life)) : batch.Curve[^1].Seconds;
        var inSight = batch.Curve.Where(p => p.Seconds <= end).ToList();
        return new Curve(
            v => v.Say($"{v.Mass(heat.MassG)} of mix left standing", $"{v.Mass(heat.MassG)} de mezcla sin verter"),
            v => v.Say("since A touched B", "desde que A tocó B"), (_, x) => Voice.Clock(x),
            CurveLine.Celsius(v => v.Say("temperature of the mix", "temperatura de la mezcla"), [.. inSight.Select(p => (p.Seconds, p.Celsius))]))
        {
            Beside = [CurveLine.Share(v => v.Say("reacted", "reaccionado"), [.. inSight.Select(p => (p.Seconds, p.Conversion))])],
            Marks = double.IsFinite(life) ? [new CurveMark(life, v => v.Say($"pour it out by {Voice.Clock(life)}", $"viértala antes de {Voice.Clock(life)}"), IsDeadline: true)] : [],
        };
    }
}
