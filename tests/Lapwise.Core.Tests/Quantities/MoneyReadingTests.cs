using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Quantities;

public sealed class MoneyReadingTests
{
    [Theory]
    [InlineData("84", "84")]
    [InlineData("84.50", "84.50")]
    [InlineData("84,50", "84.5")]
    [InlineData("84.50 USD", "84.5")]
    [InlineData("usd 84.50", "84.5")]
    [InlineData("$84.50", "84.5")]
    [InlineData("1,234.56", "1234.56")]
    [InlineData("-12.30", "-12.3")]
    [InlineData("0.1", "0.1")]
    public void Money_is_read_exactly(string text, string value)
    {
        Assert.False(MoneyReading.Money(text, Currency.UsDollar).Failed(out _, out var amount));
        Assert.Equal(decimal.Parse(value), amount.Value);
    }

    [Theory]
    [InlineData("", "QuantityMissing")]
    [InlineData("84 EUR", "CurrencyMixed")]
    [InlineData("€84", "CurrencyUnknown")]
    [InlineData("84 XQQ", "CurrencyUnknown")]
    [InlineData("1,234", "NumberAmbiguous")]
    [InlineData("99999999999", "TooLarge")]
    [InlineData("eighty", "CurrencyUnknown")]
    public void What_is_no_money_is_a_reason(string text, string code)
    {
        Assert.True(MoneyReading.Money(text, Currency.UsDollar).Failed(out var why, out _));
        Assert.Equal(code, why.Code);
        Assert.All(Invented.Voices, v => Assert.False(string.IsNullOrWhiteSpace(why.Text(v) + why.Cure(v))));
    }
}
