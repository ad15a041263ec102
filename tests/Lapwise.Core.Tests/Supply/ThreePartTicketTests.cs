using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Tests.Supply;

public sealed class ThreePartTicketTests
{
    private static Coat ThreeParts(double a, double b, double c) =>
        Invented.Coat with { Product = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, a, b, c), DensityCGPerMl = 0.9 } };

    private static BatchTicket Ticket(double wanted, double a, double b, double c, double cup = 10, double scale = 1) =>
        Ticketing.Ticket(ThreeParts(a, b, c), Invented.Tools with { CupStepMl = cup, ScaleStepG = scale }, "A", wanted);

    /// <summary>By hand: 700 mL at 4 : 2 : 1 are 400, 200 and 100 mL, weighing 416, 222 and 90 g.</summary>
    [Fact]
    public void Seven_hundred_at_four_to_two_to_one()
    {
        var ticket = Ticket(700, 4, 2, 1);
        Assert.Equal([("A", 400.0, 416.0), ("B", 200.0, 222.0), ("C", 100.0, 90.0)], ticket.Parts.Select(p => (p.Name, Math.Round(p.Ml, 9), Math.Round(p.G, 9))));
        Assert.Equal(0, ticket.RatioError, 1e-12);
    }

    /// <summary>The search looks at a strip of the lattice only; here is all of it.</summary>
    [Fact]
    public void The_marks_are_the_best_of_the_whole_lattice() =>
        Gen.Select(Gen.Double[50, 500], Gen.Double[0.3, 6], Gen.Double[0.3, 6], Gen.Double[0.3, 6], Gen.Double[8, 40]).Sample((wanted, a, b, c, cup) =>
        {
            var ticket = Ticket(wanted, a, b, c, cup);
            var most = wanted + Math.Max(wanted / 10, 4 * cup);
            double Cost(double aMl, double bMl, double cMl) =>
                (10 * Math.Max(Math.Abs((aMl / bMl * b / a) - 1), Math.Abs((aMl / cMl * c / a) - 1))) + Math.Max(0, (aMl + bMl + cMl - wanted) / wanted);

            var best = double.MaxValue;
            for (var i = 1; i * cup <= most; i++)
                for (var j = 1; (i + j) * cup <= most; j++)
                    for (var k = 1; (i + j + k) * cup <= most; k++)
                        if ((i + j + k) * cup >= wanted * (1 - 1e-9)) best = Math.Min(best, Cost(i * cup, j * cup, k * cup));
            Assert.True(Cost(ticket.Parts[0].Ml, ticket.Parts[1].Ml, ticket.Parts[2].Ml) <= best + 1e-8);
        });

    [Fact]
    public void Neither_cup_nor_scale_makes_less_than_is_wanted() =>
        Gen.Select(Gen.Double[50, 3000], Gen.Double[0.2, 6], Gen.Double[0.2, 6], Gen.Double[0.2, 6]).Sample((wanted, a, b, c) =>
        {
            var ticket = Ticket(wanted, a, b, c, cup: 7.4, scale: 1);
            Assert.True(ticket.VolumeMl >= wanted * (1 - 1e-8));
            Assert.True((ticket.Parts[0].G / 1.04) + (ticket.Parts[1].G / 1.11) + (ticket.Parts[2].G / 0.9) >= wanted * (1 - 1e-8));
        });

    [Fact]
    public void A_fine_measure_of_a_large_batch_is_found_at_once()
    {
        var ticket = Ticket(50_000, 3.7, 1.9, 0.83, cup: 0.01, scale: 0.01);
        Assert.InRange(ticket.RatioError, -1e-5, 1e-5);
    }
}
