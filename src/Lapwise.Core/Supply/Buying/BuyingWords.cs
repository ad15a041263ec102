using Lapwise.Core.Explain;

namespace Lapwise.Core.Supply.Buying;

/// <summary>What stands beside an order wherever it is shown.</summary>
public static class BuyingWords
{
    /// <summary>What the chance asked for is of, and what the needs are.</summary>
    public static string HowSure(double chanceAsked, Voice v) => v.Say(
        $"The cheapest kits that are enough with {v.Percent(chanceAsked, 1)}, for each coating and colour on its own; of several together the chance is less. Needs are estimates.",
        $"Los juegos más baratos que alcanzan con el {v.Percent(chanceAsked, 1)}, para cada recubrimiento y color por separado; para varios juntos la probabilidad es menor. Las necesidades son estimaciones.");

    /// <summary>Thinner goes by the name on its can, a solvent by what is done with it.</summary>
    public static string Of(LiquidUse use, string name, Voice v) => use is LiquidUse.Wiping ? v.Say($"{name} for the wipe", $"{name} para la limpieza") : name;

    /// <summary>What holds for every liquid beside the kits. Common practice, no source.</summary>
    public static string OfLiquids(bool mayBurn, Voice v) =>
        v.Say("As expected, without what is left in opened cans: look before you buy.", "Según lo previsto, sin contar lo que quede en botes abiertos: mire antes de comprar.")
        + (mayBurn ? " " + v.Say("What may burn travels closed and upright, out of the sun, never overnight in the vehicle; the safety data sheet and local rules say how, and how much.",
            "Lo que puede arder viaja cerrado y de pie, sin sol, nunca de noche en el vehículo; la hoja de datos de seguridad y las normas locales dicen cómo y cuánto.") : "");
}
