using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

/// <summary>Reads money as a person writes it: <c>84</c>, <c>84.50</c>, <c>84,50 EUR</c>, <c>USD 84.50</c>, <c>$84.50</c>.</summary>
public static class MoneyReading
{
    private const int CodeLength = 3;

    /// <summary>What is taken for a slip of the pen rather than a price, either way from zero.</summary>
    public const decimal Most = 1_000_000_000m;

    /// <param name="currency">The currency of the shop; another one is a reason and never converted.</param>
    public static Read<MoneyAmount> Money(Entry entry, Currency currency)
    {
        var text = (entry.Text ?? "").Trim();
        if (text.Length == 0)
        {
            return new Misread("QuantityMissing", 0,
                v => v.Say("Nothing is entered; an amount of money is needed.", "No hay nada escrito; se necesita un importe."), Cure(currency));
        }

        var (said, digits) = Parted(text);
        if (said.Length > 0 && !IsSign(said, currency))
        {
            if (!Currency.TryOf(said, out var other))
            {
                return new Misread("CurrencyUnknown", 0,
                    v => v.Say($"{Misreads.Quote(v, said)} is not the code of a currency (ISO 4217).", $"{Misreads.Quote(v, said)} no es el código de una moneda (ISO 4217)."), Cure(currency));
            }

            if (other != currency) return Mixed(other, currency);
        }

        var negative = digits is ['-' or '−', ..];
        if (Reading.Number(negative ? digits[1..] : digits).Failed(out var why, out var value)) return why;
        if (value > (double)Most)
        {
            return new Misread("TooLarge", 0,
                v => v.Say($"{Misreads.Quote(v, text)} is more than {v.Number((double)Most, 0)}.", $"{Misreads.Quote(v, text)} es más de {v.Number((double)Most, 0)}."),
                v => v.Say("Check the digits.", "Revise las cifras."));
        }

        // Fifteen digits go through a double unchanged, and the range leaves none beyond.
        return new MoneyAmount(negative ? -(decimal)value : (decimal)value, currency);
    }

    /// <summary>The fault of two currencies in one sum.</summary>
    public static Misread Mixed(Currency other, Currency currency) => new("CurrencyMixed", 0,
        v => v.Say($"This is in {other}; the shop works in {currency}, and no rate of exchange is kept here.", $"Esto está en {other}; el taller trabaja en {currency}, y aquí no se guarda ningún tipo de cambio."),
        v => v.Say($"Enter what it costs you in {currency}.", $"Escriba lo que le cuesta en {currency}."));

    private static Phrase Cure(Currency currency) =>
        v => v.Say($"Write it as 84.50, or 84.50 {currency}.", $"Escríbalo como 84,50 o 84,50 {currency}.");

    /// <summary>The currency as said, before or after the digits; empty where none is.</summary>
    private static (string Said, string Digits) Parted(string text)
    {
        if (!char.IsAsciiDigit(text[0]) && text[0] is not ('-' or '−'))
        {
            var length = char.IsAsciiLetter(text[0]) ? Math.Min(CodeLength, text.Length) : 1;
            return (text[..length], text[length..].Trim());
        }

        var end = text.Length;
        while (end > 0 && !char.IsAsciiDigit(text[end - 1])) end--;
        return (text[end..].Trim(), text[..end].Trim());
    }

    private static bool IsSign(string said, Currency currency) => said switch
    {
        "€" => currency.Code == "EUR",
        "£" => currency.Code == "GBP",
        "$" => currency.Code is "USD" or "CAD" or "AUD" or "NZD" or "MXN" or "ARS" or "CLP" or "COP" or "UYU" or "DOP",
        _ => false,
    };
}
