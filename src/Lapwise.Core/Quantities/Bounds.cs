using Lapwise.Core.Explain;

namespace Lapwise.Core.Quantities;

/// <summary>The range a quantity may have, and how its limits are shown.</summary>
/// <param name="Least">Smallest value in base units.</param>
/// <param name="Most">Largest value in base units.</param>
public sealed record Bounds(double Least, double Most, Func<Voice, double, string> Show)
{
    /// <summary>Nothing at or below zero.</summary>
    public bool AboveZero { get; init; }

    /// <summary>Null where the value is within; otherwise the reason, with what was entered and the limit.</summary>
    public Misread? Check(double value, Entry entry)
    {
        if (AboveZero && value <= 0)
        {
            return new Misread("NotPositive", 0,
                v => v.Say($"{Misreads.Quote(v, entry.Text)} is not more than zero.", $"{Misreads.Quote(v, entry.Text)} no es mayor que cero."),
                Between);
        }

        if (value < Least)
        {
            return new Misread("TooSmall", 0,
                v => v.Say($"{Misreads.Quote(v, entry.Text)} is less than {Show(v, Least)}.", $"{Misreads.Quote(v, entry.Text)} es menos de {Show(v, Least)}."),
                Between);
        }

        if (!(value <= Most))
        {
            return new Misread("TooLarge", 0,
                v => v.Say($"{Misreads.Quote(v, entry.Text)} is more than {Show(v, Most)}.", $"{Misreads.Quote(v, entry.Text)} es más de {Show(v, Most)}."),
                Between);
        }

        return null;
    }

    private string Between(Voice v) => v.Say($"Enter a value from {Show(v, Least)} to {Show(v, Most)}.", $"Escriba un valor de {Show(v, Least)} a {Show(v, Most)}.");
}
