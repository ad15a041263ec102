using CsCheck;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Tests.Supply;

public sealed class TicketingTests
{
    private static BatchTicket Ticket(double wantedMl, double a = 2, double b = 1, double cupMl = 10, double scaleG = 1, double thinner = 0, double largestMl = 5000) =>
        Ticketing.Ticket(
            Invented.Coat with { ThinnerFraction = thinner, Product = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, a, b) } },
            Invented.Tools with { CupStepMl = cupMl, ScaleStepG = scaleG, LargestBatchMl = largestMl }, "1", wantedMl);

    /// <summary>Common practice, no source: 2 : 1 by volume, so 24 fl oz are 16 and 8 on a cup marked in ounces.</summary>
    [Fact]
    public void A_kit_of_24_ounces_reads_16_and_8()
    {
        var ticket = Ticket(24 * Invented.MlPerUsFluidOunce, cupMl: Invented.MlPerUsFluidOunce);
        Assert.Equal(16, ticket.AMl / Invented.MlPerUsFluidOunce, 1e-9);
        Assert.Equal(8, ticket.BMl / Invented.MlPerUsFluidOunce, 1e-9);
        Assert.Equal(0, ticket.RatioError, 1e-12);
    }

    /// <summary>By hand: 500 mL at 2 : 1 in tens. 330 + 170 is 2.9 % off; 340 + 170 is exact and 10 mL more.</summary>
    [Fact]
    public void A_step_more_is_taken_for_an_exact_ratio()
    {
        var ticket = Ticket(500);
        Assert.Equal((340, 170, 0), (ticket.AMl, ticket.BMl, Math.Round(ticket.RatioError, 12)));
    }

    /// <summary>By hand: 5000 mL are 3333.3 and 1666.7; 3330 + 1670 is 0.3 % off and exact to the total, which beats 2 % more.</summary>
    [Fact]
    public void A_small_gain_in_ratio_is_not_bought_with_much_material()
    {
        var ticket = Ticket(5000, cupMl: 50, largestMl: 10000);
        Assert.InRange(ticket.VolumeMl, 5000, 5100);
        Assert.InRange(Math.Abs(ticket.RatioError), 0, 0.011);
    }

    /// <summary>
    /// By hand: 1000 mL in tens are 680 + 340; at 1.04 and 1.11 g/mL that is 707.2 and 377.4 g. Of the four pairs beside it
    /// all make more than 1000 mL, and 708 with 378 g is nearest the ratio: 0.05 % off against 0.08 % of 707 with 377.
    /// </summary>
    [Fact]
    public void The_scale_reads_the_same_batch_as_the_cup()
    {
        var ticket = Ticket(1000);
        Assert.Equal((680, 340), (ticket.AMl, ticket.BMl));
        Assert.Equal((708, 378), (ticket.AG, ticket.BG));
        Assert.Equal((708 / 1.04 / (378 / 1.11) / 2) - 1, ticket.RatioErrorByMass, 1e-12);
    }

    /// <summary>Where the cup reads the ratio, A by cup and B by scale still make the mix: they differ by their own steps only.</summary>
    [Fact]
    public void Cup_and_scale_agree_to_a_step() => Any.Sample((wanted, a, b, cup, scale, thinner, largest) =>
    {
        var ticket = Ticket(wanted, a, b, cup, scale, thinner, largest);
        if (!ticket.CupReadsRatio) return true;
        return Math.Abs(ticket.AG - (ticket.AMl * 1.04)) <= (cup * 1.04) + scale + 1e-6 && Math.Abs(ticket.BG - (ticket.BMl * 1.11)) <= (cup * 1.11) + scale + 1e-6;
    });

    [Fact]
    public void Thinner_is_rounded_and_never_over_the_limit()
    {
        var ticket = Ticket(700, thinner: 0.02, cupMl: 5);
        Assert.Equal(10, ticket.ThinnerMl);
        Assert.Equal(14, ticket.ThinnerG);
    }

    private static readonly Gen<(double Wanted, double A, double B, double Cup, double Scale, double Thinner, double Largest)> Any =
        Gen.Select(Gen.Double[20, 4000], Gen.Double[0.2, 10], Gen.Double[0.2, 10], Gen.Double[1, 30], Gen.Double[0.1, 10], Gen.Double[0, 0.02], Gen.Double[100, 4000]);

    [Fact]
    public void A_ticket_never_makes_less_than_wanted_by_cup_or_by_scale() => Any.Sample((wanted, a, b, cup, scale, thinner, largest) =>
    {
        var ticket = Ticket(wanted, a, b, cup, scale, thinner, largest);
        return ticket.VolumeMl >= wanted * (1 - 1e-8) && (ticket.AG / 1.04) + (ticket.BG / 1.11) >= wanted * (1 - 1e-8)
            && Whole(ticket.AMl / cup) && Whole(ticket.BMl / cup) && Whole(ticket.AG / scale) && Whole(ticket.BG / scale);
    });

    /// <summary>
    /// Rounding each part up is always readable and errs by less than a step of A over A or of B over B; the chosen pair
    /// is never worse than that, with extra material counted a tenth as much.
    /// </summary>
    [Fact]
    public void The_ratio_is_never_worse_than_rounding_each_part_up() => Any.Sample((wanted, a, b, cup, scale, thinner, largest) =>
    {
        var ticket = Ticket(wanted, a, b, cup, scale, thinner, largest);
        var shareA = a / (a + b);
        var upA = Math.Ceiling((wanted * shareA / cup) - 1e-9) * cup;
        var upB = Math.Ceiling((wanted * (1 - shareA) / cup) - 1e-9) * cup;

        double Cost(double aMl, double bMl) => (10 * Math.Abs((aMl / bMl * b / a) - 1)) + ((aMl + bMl - wanted) / wanted);
        Assert.True(Cost(ticket.AMl, ticket.BMl) <= Cost(upA, upB) + 1e-6);
        Assert.Equal((ticket.AMl / ticket.BMl * b / a) - 1, ticket.RatioError, 1e-9);
    });

    /// <summary>The search looks at a strip of the lattice only; here is all of it.</summary>
    [Fact]
    public void The_pair_is_the_best_of_the_whole_lattice() =>
        Gen.Select(Gen.Double[20, 600], Gen.Double[0.2, 10], Gen.Double[0.2, 10], Gen.Double[5, 40]).Sample((wanted, a, b, cup) =>
        {
            var ticket = Ticket(wanted, a, b, cup, largestMl: 1e6);
            var most = wanted + Math.Max(wanted / 10, 4 * cup);
            double Cost(double aMl, double bMl) => (10 * Math.Abs((aMl / bMl * b / a) - 1)) + Math.Max(0, (aMl + bMl - wanted) / wanted);

            var best = double.MaxValue;
            for (var i = 1; i * cup <= most; i++)
                for (var j = 1; (i + j) * cup <= most; j++)
                    if ((i + j) * cup >= wanted * (1 - 1e-9)) best = Math.Min(best, Cost(i * cup, j * cup));
            Assert.True(Cost(ticket.AMl, ticket.BMl) <= best + 1e-8);
        });

    [Fact]
    public void Thinner_stays_within_the_limit_of_what_was_measured() => Any.Sample((wanted, a, b, cup, scale, thinner, largest) =>
    {
        var ticket = Ticket(wanted, a, b, cup, scale, thinner, largest);
        return ticket.ThinnerMl <= (0.02 * ticket.VolumeMl) + 1e-6 && ticket.ThinnerG <= (0.02 * ((ticket.AG / 1.04) + (ticket.BG / 1.11))) + 1e-6;
    });

    /// <summary>A batch at the very limit of the container may pass it by its last marks only.</summary>
    [Fact]
    public void The_largest_batch_is_kept_but_for_the_last_mark() => Any.Sample((wanted, a, b, cup, scale, thinner, largest) =>
    {
        var ticket = Ticket(Math.Min(wanted, largest), a, b, cup, scale, 0, largest);
        return ticket.VolumeMl <= Math.Max(largest, Math.Min(wanted, largest) + (2 * cup)) + 1e-6;
    });

    private static bool Whole(double steps) => Math.Abs(steps - Math.Round(steps)) < 1e-6;
}
