using Lapwise.Core.Explain;
using Lapwise.Core.Money;

namespace Lapwise.Cli;

/// <summary>What money goes on, in words.</summary>
internal static class MoneyWords
{
    public static string Of(CostKind kind, Voice v) => kind switch
    {
        CostKind.Labour => v.Say("Labour", "Mano de obra"),
        CostKind.Material => v.Say("Material", "Material"),
        CostKind.Consumables => v.Say("Consumables", "Consumibles"),
        CostKind.Travel => v.Say("Travel", "Desplazamientos"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
