using CsCheck;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Quantities;

public sealed class MoneyAmountTests
{
    private static Currency Of(string code) => Currency.TryOf(code, out var currency) ? currency : throw new ArgumentException(code);

    private static readonly Gen<Currency> AnyCurrency = Gen.Int[0, 3].Select(i => Of(new[] { "USD", "EUR", "JPY", "KWD" }[i]));

    [Fact]
    public void Two_currencies_are_never_taken_together()
    {
        var (dollar, euro) = (new MoneyAmount(1, Of("USD")), new MoneyAmount(1, Of("EUR")));
        Assert.Throws<InvalidOperationException>(() => dollar + euro);
        Assert.Throws<InvalidOperationException>(() => dollar < euro);
    }

    [Theory]
    [InlineData("USD", "2.345", "2.35")]
    [InlineData("USD", "-2.345", "-2.35")]
    [InlineData("USD", "2.3449", "2.34")]
    [InlineData("JPY", "2.5", "3")]
    [InlineData("KWD", "2.3455", "2.346")]
    public void Rounding_is_to_the_smallest_coin_half_away_from_zero(string code, string amount, string rounded) =>
        Assert.Equal(decimal.Parse(rounded), new MoneyAmount(decimal.Parse(amount), Of(code)).Rounded().Value);

    [Fact]
    public void A_dollar_in_three_parts_loses_no_cent() =>
        Assert.Equal([0.34m, 0.33m, 0.33m], new MoneyAmount(1, Of("USD")).Split([1, 1, 1]).Select(p => p.Value));

    /// <summary>Seats of the largest remainder, as any textbook on apportionment works them: 21 seats for 41, 29, 17, 13.</summary>
    [Fact]
    public void Split_is_the_method_of_largest_remainders() =>
        Assert.Equal([9m, 6m, 3m, 3m], new MoneyAmount(21, Of("JPY")).Split([41, 29, 17, 13]).Select(p => p.Value));

    [Fact]
    public void Parts_add_up_and_each_is_within_one_coin_of_its_share() =>
        Gen.Select(AnyCurrency, Gen.Long[-1_000_000_000, 1_000_000_000], Gen.Int[0, 1000].Array[1, 9]).Where((_, _, w) => w.Sum() > 0).Sample((currency, steps, weights) =>
        {
            var amount = new MoneyAmount(steps * currency.Step, currency);
            var parts = amount.Split([.. weights.Select(w => (decimal)w)]);
            Assert.Equal(amount, parts.Aggregate((a, b) => a + b));
            Assert.All(parts.Zip(weights), p => Assert.True(Math.Abs(p.First.Value - (amount.Value * p.Second / weights.Sum())) < currency.Step));
            Assert.All(parts.Zip(weights), p => Assert.True(p.Second > 0 || p.First.Value == 0));
        });
}
