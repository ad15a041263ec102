using System.Globalization;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Explain;

/// <summary>How money is shown: every decimal of the currency, its code behind, thousands set apart.</summary>
public sealed partial record Voice
{
    /// <summary><c>1,234.50 USD</c>, in Spanish <c>1.234,50 USD</c>: the code, for a sign such as $ belongs to many currencies.</summary>
    public string Money(MoneyAmount amount) => BareMoney(amount) + In(amount.Currency.ToString());

    /// <summary>Without its code, for a column headed by the currency.</summary>
    public string BareMoney(MoneyAmount amount)
    {
        var value = decimal.Round(amount.Value, amount.Currency.Decimals, MidpointRounding.AwayFromZero);
        var text = Math.Abs(value).ToString("N" + amount.Currency.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        if (Language == Language.Spanish) text = text.Replace('.', ' ').Replace(',', '.').Replace(' ', ',');
        return (value < 0 ? "−" : "") + text;
    }
}
