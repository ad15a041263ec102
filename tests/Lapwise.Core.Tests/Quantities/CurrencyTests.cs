using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Quantities;

public sealed class CurrencyTests
{
    private static readonly IReadOnlyList<(string Code, int Decimals)> Cldr = [.. Rows("general/currencies.txt").Select(r => (r[0], (int)Number(r[1])))];

    [Fact]
    public void Every_currency_is_listed_once_and_known_outside() =>
        Assert.Equal(Cldr.Select(c => c.Code), Currency.All.Select(c => c.Code).Order(StringComparer.Ordinal));

    /// <summary>CLDR gives no decimals where cents are no longer seen in shops; ISO 4217 keeps them on paper, and so do invoices.</summary>
    [Fact]
    public void Decimals_are_those_of_CLDR_but_for_coins_that_only_paper_knows()
    {
        string[] onPaperOnly = ["AFN", "ALL", "COP", "HUF", "IDR", "IQD", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "PKR", "SOS", "SYP", "YER"];
        var differ = Currency.All.Where(c => Cldr.Single(x => x.Code == c.Code).Decimals != c.Decimals).ToList();
        Assert.All(differ, c => Assert.Equal(0, Cldr.Single(x => x.Code == c.Code).Decimals));
        Assert.Equal(onPaperOnly, differ.Select(c => c.Code).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_step_is_the_smallest_amount_written() =>
        Assert.Equal([0.01m, 1m, 0.001m], new[] { "USD", "JPY", "KWD" }.Select(code => Currency.TryOf(code, out var c) ? c.Step : 0));
}
