using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Supply;

public sealed class KitsTests
{
    [Fact]
    public void Cheapest_agrees_with_the_worked_cases() => Assert.All(Rows("general/kits.txt"), row =>
    {
        IReadOnlyList<Kit> kits = [.. row[0].Split(',').Zip(row[1].Split(','), (size, price) => new Kit(Number(size), Price(price)))];
        var choice = Kits.Cheapest(kits, Number(row[2]))!;
        Assert.Equal((Price(row[3]), Number(row[4])), (choice.Cost, choice.TotalMl));
    });

    /// <summary>Two kits of 24 fl oz hold exactly 48 fl oz; a table in whole millilitres would buy a third.</summary>
    [Fact]
    public void Ounces_that_fill_exactly_need_no_further_kit()
    {
        var kits = new[] { 24, 96 }.Select(oz => new Kit(oz * Invented.MlPerUsFluidOunce, oz * 3)).ToList();
        var choice = Kits.Cheapest(kits, 48 * Invented.MlPerUsFluidOunce)!;
        Assert.Equal(2, Assert.Single(choice.Kits).Count);
    }

    [Fact]
    public void Nothing_needed_buys_nothing() => Assert.Empty(Kits.Cheapest([new Kit(700, 80)], 0)!.Kits);

    [Fact]
    public void Nothing_sold_is_no_choice() => Assert.Null(Kits.Cheapest([], 500));

    [Fact]
    public void Among_equal_costs_the_least_is_left_over()
    {
        var choice = Kits.Cheapest([new Kit(1000, 50), new Kit(800, 50)], 700)!;
        Assert.Equal(800, Assert.Single(choice.Kits).SizeMl);
    }

    private static readonly Gen<Kit[]> AnyKits =
        Gen.Select(Gen.Int[1, 40], Gen.Int[1, 60]).Select((size, price) => new Kit(size * 50, price)).Array[1, 4];

    [Fact]
    public void Cheapest_is_never_short_never_dearer_than_brute_force_and_leaves_the_least() =>
        Gen.Select(AnyKits, Gen.Double[1, 4000]).Sample((kits, need) =>
        {
            var choice = Kits.Cheapest(kits, need)!;
            var (cost, total) = BruteForce(kits, need);
            Assert.True(choice.TotalMl >= need - 1e-6);
            Assert.Equal((cost, total), (choice.Cost, Math.Round(choice.TotalMl, 6)));
        });

    /// <summary>Sizes that share no divisor are counted rounded down; then it may buy a little more, never less.</summary>
    [Fact]
    public void Sizes_of_two_worlds_are_never_short() =>
        Gen.Select(Gen.Int[1, 20], Gen.Int[1, 20], Gen.Double[1, 8000]).Sample((ounces, decilitres, need) =>
            Kits.Cheapest([new Kit(ounces * Invented.MlPerUsFluidOunce, 10), new Kit(decilitres * 100, 9)], need)!.TotalMl >= need - 1e-6);

    /// <summary>Past the end of the table the kit of best value takes the bulk; the answer stays that of a whole table.</summary>
    [Fact]
    public void A_bulk_order_is_still_the_cheapest()
    {
        Kit[] kits = [new(300, 4), new(500, 6), new(700, 9)];
        // In hundreds of mL: 5 is best value at 1.2; 1e8 mL are exactly 200 000 kits of it, past a table of 200 000 steps.
        var choice = Kits.Cheapest(kits, 1e8)!;
        Assert.Equal(1_200_000, choice.Cost);
        Assert.Equal(1e8, choice.TotalMl);

        var further = Kits.Cheapest(kits, 1e8 + 1300)!;
        Assert.Equal(1_200_016, further.Cost);
    }

    private static (decimal Cost, double Total) BruteForce(Kit[] kits, double need)
    {
        var best = (Cost: decimal.MaxValue, Total: double.MaxValue);
        Try(0, 0, 0);
        return best;

        void Try(int k, decimal cost, double total)
        {
            if (total >= need)
            {
                if ((cost, total).CompareTo(best) < 0) best = (cost, total);
                return;
            }

            if (k == kits.Length || cost > best.Cost) return;
            Try(k + 1, cost, total);
            Try(k, cost + kits[k].Price, total + kits[k].SizeMl);
        }
    }
}
