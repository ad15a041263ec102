using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>What a coat is waited for after it is rolled.</summary>
public enum WaitFor { DryToTouch, EarliestRecoat, LatestRecoat, LightUse, Water, FullUse, FullCure }

/// <summary>One wait of a data sheet, run through the room's temperature.</summary>
/// <param name="SheetS">As the sheet gives it.</param>
/// <param name="SheetCelsius">The temperature it holds at.</param>
/// <param name="Seconds">In this room, from the end of the coat; null where the temperatures known do not reach that far.</param>
public sealed record Wait(WaitFor For, double SheetS, double SheetCelsius, double? Seconds, Basis Basis);

/// <summary>The waits of a product under a changing temperature.</summary>
public static class Waits
{
    public static IReadOnlyList<Wait> Of(Product product, IReadOnlyList<TemperatureAt> course, bool holdsLast = false) =>
        [.. OnSheet(product).Select(w => Run(product, w.For, w.Seconds, w.Celsius, course, holdsLast))];

    /// <summary>One of them; null where the sheet does not give it.</summary>
    public static Wait? One(Product product, WaitFor what, IReadOnlyList<TemperatureAt> course, bool holdsLast = false) =>
        OnSheet(product).Where(w => w.For == what).Select(w => Run(product, what, w.Seconds, w.Celsius, course, holdsLast)).FirstOrDefault();

    private static IEnumerable<(WaitFor For, double Seconds, double Celsius)> OnSheet(Product product)
    {
        if (product.DryToTouch is { } touch) yield return (WaitFor.DryToTouch, touch.Seconds, touch.Celsius);
        if (product.Recoat is { } recoat)
        {
            yield return (WaitFor.EarliestRecoat, recoat.EarliestS, recoat.AtCelsius);
            yield return (WaitFor.LatestRecoat, recoat.LatestS, recoat.AtCelsius);
        }

        if (product.UsableFrom is not { } usable) yield break;
        yield return (WaitFor.LightUse, usable.LightUseS, usable.AtCelsius);
        if (usable.WaterS is { } water) yield return (WaitFor.Water, water, usable.AtCelsius);
        yield return (WaitFor.FullUse, usable.FullUseS, usable.AtCelsius);
        if (usable.FullCureS is { } cure) yield return (WaitFor.FullCure, cure, usable.AtCelsius);
    }

    /// <summary>The one that comes first in the work: for the next coat, else the shortest known; null: there is none.</summary>
    internal static Wait? NextOf(IReadOnlyList<Wait> waits) => waits.FirstOrDefault(w => w.For is WaitFor.EarliestRecoat) ?? (waits.Count > 0 ? waits[0] : null);

    /// <summary>How one of its waits follows the temperature.</summary>
    internal static TemperatureLaw LawOf(Product product, Wait wait) => CureLaw(product, wait.SheetS, wait.SheetCelsius);

    private static Wait Run(Product product, WaitFor what, double seconds, double celsius, IReadOnlyList<TemperatureAt> course, bool holdsLast)
    {
        var law = CureLaw(product, seconds, celsius);
        return new Wait(what, seconds, celsius, EquivalentAge.Until(law, course, holdsLast), new Basis(
            "∫ dt / t(T) = 1",
            [
                new(v => v.Say("data sheet", "ficha técnica"), v => v.Say($"{Voice.Span(seconds)} at {v.Temperature(celsius)}", $"{Voice.Span(seconds)} a {v.Temperature(celsius)}")),
                new(v => v.Say("law of temperature", "ley de temperatura"), v => law is TemperatureLaw.ThroughTwoPoints through
                    ? v.Say($"as the pot life, E = {v.Number(through.EnergyKJPerMol, 1)} kJ/mol", $"como la vida de la mezcla, E = {v.Number(through.EnergyKJPerMol, 1)} kJ/mol")
                    : v.Say($"half for each {v.TemperatureDifference(10)} up", $"la mitad por cada {v.TemperatureDifference(10)} más")),
                new(v => v.Say("temperatures of the room", "temperaturas de la sala"), v => course.Count == 1
                    ? v.Temperature(course[0].Celsius)
                    : v.Say($"{v.Temperature(course.Min(c => c.Celsius))} to {v.Temperature(course.Max(c => c.Celsius))} over {Voice.Span(course[^1].Seconds - course[0].Seconds)}",
                        $"de {v.Temperature(course.Min(c => c.Celsius))} a {v.Temperature(course.Max(c => c.Celsius))} en {Voice.Span(course[^1].Seconds - course[0].Seconds)}")),
            ],
            law is TemperatureLaw.ThroughTwoPoints ? Sources.Arrhenius : Sources.Ufgs09971));
    }

    /// <summary>Cure is the mix's own reaction: it follows the pot life's two points where the sheet gives them, else the rule of ten.</summary>
    private static TemperatureLaw CureLaw(Product product, double seconds, double celsius)
    {
        if (product.EndsBy is EndOfPotLife.Hidden || TemperatureLaw.Through(product.PotLife) is not TemperatureLaw.ThroughTwoPoints mix)
            return new TemperatureLaw.HalvingEachTenDegrees(new TimeAt(seconds, celsius));
        const double apartK = 10;
        return new TemperatureLaw.ThroughTwoPoints(
            new TimeAt(seconds, celsius),
            new TimeAt(seconds * mix.SecondsAt(celsius + apartK) / mix.SecondsAt(celsius), celsius + apartK));
    }

    public static string Say(WaitFor what, Voice v) => what switch
    {
        WaitFor.DryToTouch => v.Say("dry to touch", "seco al tacto"),
        WaitFor.EarliestRecoat => v.Say("earliest recoat", "repintado más temprano"),
        WaitFor.LatestRecoat => v.Say("latest recoat without sanding", "repintado más tardío sin lijar"),
        WaitFor.LightUse => v.Say("light use", "uso ligero"),
        WaitFor.Water => v.Say("standing water", "agua encima"),
        WaitFor.FullUse => v.Say("full use", "uso normal"),
        WaitFor.FullCure => v.Say("full cure", "curado total"),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };
}
