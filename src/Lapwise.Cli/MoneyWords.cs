using Lapwise.Core.Explain;
using Lapwise.Core.Money;
using Lapwise.Core.Quantities;

namespace Lapwise.Cli;

/// <summary>Money in a column headed by its currency.</summary>
internal static class MoneyWords
{
    public static string Bare(MoneyAmount amount, Voice v) => v.Money(amount) is var text ? text[..text.LastIndexOf(' ')] : "";

    public static string Of(CostKind kind, Voice v) => kind switch
    {
        CostKind.Labour => v.Say("Labour", "Mano de obra"),
        CostKind.Material => v.Say("Material", "Material"),
        CostKind.Consumables => v.Say("Consumables", "Consumibles"),
        CostKind.Travel => v.Say("Travel", "Desplazamientos"),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, null),
    };
}
