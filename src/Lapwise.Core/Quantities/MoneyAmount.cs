namespace Lapwise.Core.Quantities;

/// <summary>
/// Money: an exact decimal in one currency. Amounts of two currencies are never added or compared: no rate of exchange is
/// kept here, so that is a slip of the program and throws; whoever reads what a person entered asks first and says a fault.
/// </summary>
public readonly record struct MoneyAmount : IComparable<MoneyAmount>
{
    public MoneyAmount(decimal value, Currency currency) => (Value, Currency) = (value, currency);

    public decimal Value { get; }

    public Currency Currency { get; }

    public static MoneyAmount Zero(Currency currency) => new(0, currency);

    /// <summary>
    /// The rounding rule, the only one: to the currency's smallest written amount, half a step away from zero.
    /// What is rounded is each line of a price and each tax; totals are sums of what was rounded and are never rounded again.
    /// </summary>
    public MoneyAmount Rounded() => new(decimal.Round(Value, Currency.Decimals, MidpointRounding.AwayFromZero), Currency);

    /// <summary>Up to the currency's next smallest amount: for a floor, which must not be rounded under.</summary>
    public MoneyAmount RoundedUp() => new(decimal.Round(Value, Currency.Decimals, MidpointRounding.ToPositiveInfinity), Currency);

    public static MoneyAmount operator +(MoneyAmount a, MoneyAmount b) => new(a.Value + b.Value, Same(a, b));
    public static MoneyAmount operator -(MoneyAmount a, MoneyAmount b) => new(a.Value - b.Value, Same(a, b));
    public static MoneyAmount operator *(MoneyAmount a, decimal times) => new(a.Value * times, a.Currency);
    public static bool operator <(MoneyAmount a, MoneyAmount b) => a.CompareTo(b) < 0;
    public static bool operator >(MoneyAmount a, MoneyAmount b) => a.CompareTo(b) > 0;
    public static bool operator <=(MoneyAmount a, MoneyAmount b) => a.CompareTo(b) <= 0;
    public static bool operator >=(MoneyAmount a, MoneyAmount b) => a.CompareTo(b) >= 0;

    public int CompareTo(MoneyAmount other)
    {
        Same(this, other);
        return Value.CompareTo(other.Value);
    }

    public static MoneyAmount Larger(MoneyAmount a, MoneyAmount b) => a >= b ? a : b;

    /// <summary>
    /// Splits a rounded amount in given proportions so that the parts are rounded too and add up to it exactly: each gets its
    /// share rounded down, and the steps left go to the largest remainders (Hamilton's method), earlier parts first.
    /// </summary>
    /// <param name="weights">At least one, none below zero, not all zero.</param>
    /// <exception cref="ArgumentException">The amount is not rounded, or the weights are no proportions.</exception>
    public IReadOnlyList<MoneyAmount> Split(IReadOnlyList<decimal> weights)
    {
        if (Rounded() != this) throw new ArgumentException("only a rounded amount can be split", nameof(weights));
        if (weights.Count == 0 || weights.Any(w => w < 0) || weights.Sum() <= 0) throw new ArgumentException("the weights are no proportions", nameof(weights));

        var (step, whole, sum) = (Currency.Step, Math.Abs(Value / Currency.Step), weights.Sum());
        var shares = weights.Select(w => whole * w / sum).ToList();
        var steps = shares.Select(decimal.Floor).ToList();
        var left = (int)(whole - steps.Sum());
        foreach (var i in Enumerable.Range(0, shares.Count).OrderByDescending(i => shares[i] - steps[i]).ThenBy(i => i).Take(left)) steps[i]++;

        var sign = Value < 0 ? -step : step;
        var currency = Currency;
        return [.. steps.Select(s => new MoneyAmount(s * sign, currency))];
    }

    public override string ToString() => $"{Value.ToString(System.Globalization.CultureInfo.InvariantCulture)} {Currency}";

    private static Currency Same(MoneyAmount a, MoneyAmount b) => a.Currency == b.Currency
        ? a.Currency
        : throw new InvalidOperationException($"{a.Currency} and {b.Currency} cannot be taken together");
}
