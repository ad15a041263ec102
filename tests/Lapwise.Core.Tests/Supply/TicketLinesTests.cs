using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;
using Lapwise.Core.Supply;
using Lapwise.Core.Tests.Work;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Supply;

public sealed class TicketLinesTests
{
    private static readonly Product Plain = Invented.Clear with { Hazards = [] };

    private static IReadOnlyList<TicketLine> Lines(Coat coat, CoatWork work, string batch, double flatM2 = 4) =>
        TicketLines.Of(work with { Coat = coat }, Supplied(coat, work, flatM2), Supplied(coat, work, flatM2).Tickets.Single(t => t.Batch == batch));

    private static CoatSupply Supplied(Coat coat, CoatWork work, double flatM2)
    {
        var job = Invented.Job with { System = [coat] };
        return Supplying.Supply(job, Estimating.Estimate(job, Invented.Measured(flatM2)), new JobWork([work with { Coat = coat }])).Coats[0];
    }

    /// <summary>Batch B is rolled from minute 30 to 50; batch A must be used up at minute <paramref name="firstUsedUpMin"/>.</summary>
    private static CoatWork TwoBatches(long firstUsedUpMin) => Plans.Of(900, Origin.DataSheet,
        [Plans.Section("1", 0, 3 * 60_000, 10 * 60_000, "A"), Plans.Section("2", 0, 30 * 60_000, 50 * 60_000, "B")], [],
        [new Batch("A", 0, 0, 150_000, firstUsedUpMin * 60_000, 300, 360, ["1"]), new Batch("B", 0, 20 * 60_000, 22 * 60_000, 80 * 60_000, 300, 360, ["2"])]);

    private static bool Says(IReadOnlyList<TicketLine> lines, string text) => lines.Any(l => l.Text(Voice.Default).Contains(text, StringComparison.Ordinal));

    [Fact]
    public void Every_ticket_is_mixed_twice_in_two_containers_and_never_thinned_beyond_the_limit()
    {
        var lines = Lines(Invented.Coat with { Product = Plain }, TwoBatches(60), "A");
        Assert.True(Says(lines, "second clean container"));
        Assert.Contains(lines, l => l.Kind is TicketLineKind.Never && l.Text(Voice.Default).StartsWith("water: never more than 2 %", StringComparison.Ordinal));
    }

    [Fact]
    public void The_most_thinner_is_said_in_the_measure_the_thinner_is_drawn_up_in()
    {
        var (coat, work) = (Invented.Coat with { Product = Plain, ThinnerFraction = 0.01 }, TwoBatches(60));
        var (supply, us) = (Supplied(coat, work, 4), new Voice(Language.English, UnitSystem.Us));
        var ticket = supply.Tickets[0] with { ThinnerWantedMl = 3, ThinnerMl = 0 };
        string Said(BatchTicket t) => TicketLines.Of(work with { Coat = coat }, supply, t).Single(l => l.Kind is TicketLineKind.Never).Text(us);
        Assert.EndsWith(" mL.", Said(ticket));
        Assert.EndsWith(" fl oz.", Said(ticket with { ThinnerMl = 3 }));
    }

    [Fact]
    public void What_settles_is_stirred_what_is_strained_strained_and_what_stands_stood()
    {
        var plain = Lines(Invented.Coat with { Product = Plain }, TwoBatches(60), "A");
        var product = Plain with { StirFirst = "Stir part A.", Strain = "a fine paint strainer", InductionS = 600 };
        var lines = Lines(Invented.Coat with { Product = product }, TwoBatches(60), "A");
        foreach (var line in (string[])["Before measuring: Stir part A.", "Strain it into the tray: a fine paint strainer.", "Let it stand 10 min"])
        {
            Assert.False(Says(plain, line));
            Assert.True(Says(lines, line), line);
        }
    }

    [Theory]
    [InlineData("fog", 4, true)]
    [InlineData("fog", 1, false)]
    [InlineData(null, 4, false)]
    public void A_colour_out_of_more_than_one_kit_is_boxed_before_the_first_batch(string? color, double flatM2, bool boxed)
    {
        var coat = Invented.Coat with { Product = Plain, Color = color };
        // With one small batch at 1 m² one kit is enough.
        var work = flatM2 > 1 ? TwoBatches(60) : TwoBatches(60) with { Batches = [TwoBatches(60).Batches[0]] };
        Assert.Equal(boxed, Says(Lines(coat, work, "A", flatM2), "Box the colour"));
        if (flatM2 > 1) Assert.False(Says(Lines(coat, work, "B", flatM2), "Box the colour"));
    }

    [Theory]
    [InlineData(45, true)]
    [InlineData(50, false)]
    public void Roller_and_tray_are_changed_where_their_first_mix_ends_before_the_batch_is_rolled(long firstUsedUpMin, bool fresh)
    {
        var (coat, work) = (Invented.Coat with { Product = Plain }, TwoBatches(firstUsedUpMin));
        Assert.Equal(fresh, Says(Lines(coat, work, "B"), "fresh roller"));
        Assert.False(Says(Lines(coat, work, "A"), "fresh roller"));
        // The kits count with what the second roller (60 mL) and tray (45 mL) keep.
        Assert.Equal(fresh ? 105 : 0, FreshRollers.KeepMl(work, Consumption.Of(coat, Invented.Tools)), 1e-9);
        Assert.Equal(fresh, Supplied(coat, work, 4).Reasons.Any(r => r.Code == "FreshRollerNeeded"));
        Assert.Equal(fresh ? 105 : 0, Supplied(coat, work, 4).NeedMl - Supplied(coat, TwoBatches(60), 4).NeedMl, 1e-9);
    }

    [Fact]
    public void A_poured_coat_uses_up_no_roller() =>
        Assert.Empty(FreshRollers.Before(TwoBatches(45) with { Coat = Invented.Coat with { Product = Plain with { Method = ApplicationMethod.Poured } } }));

    [Fact]
    public void What_is_left_of_a_kit_is_said_with_the_last_batch()
    {
        var (coat, work) = (Invented.Coat with { Product = Plain }, TwoBatches(60));
        Assert.True(Supplied(coat, work, 4).LeftOverMl > 60);
        Assert.True(Says(Lines(coat, work, "B"), "stay unmixed in the kits"));
        Assert.False(Says(Lines(coat, work, "A"), "stay unmixed in the kits"));
        Assert.True(Says(Lines(coat with { Product = Plain with { Hazards = [Hazard.Isocyanate] } }, work, "B"), "draws moisture"));
    }

    [Fact]
    public void Every_line_is_said_in_both_languages_and_unit_systems()
    {
        var product = Plain with { StirFirst = "Stir.", Strain = "a strainer", InductionS = 600, EndsBy = EndOfPotLife.Overheats, Hazards = [Hazard.Isocyanate] };
        var coats = new[] { product, product with { EndsBy = EndOfPotLife.Hidden, Thinner = null }, product with { Method = ApplicationMethod.Poured } }
            .Select(p => Invented.Coat with { Product = p, Color = "fog" });
        Said.InEveryVoice([.. from coat in coats from batch in (string[])["A", "B"] from line in Lines(coat, TwoBatches(45), batch) select line.Text]);
    }

    /// <summary>US marks of 1/4 fl oz (7.4 mL): 1 % of 377 mL is 3.8 mL, which the cup would double.</summary>
    [Theory]
    [InlineData(377, false)]
    [InlineData(1450, true)]
    public void Thinner_between_the_marks_is_drawn_up_in_millilitres(double wantedMl, bool cupReads)
    {
        var tools = Invented.Tools with { CupStepMl = 0.25 * Invented.MlPerUsFluidOunce, LargestBatchMl = 5000 };
        var ticket = Ticketing.Ticket(Invented.Coat with { ThinnerFraction = 0.01 }, tools, "A", wantedMl);
        Assert.Equal(ticket.VolumeMl * 0.01, ticket.ThinnerWantedMl, 1e-9);
        Assert.Equal(cupReads, ticket.CupReadsThinner);
        Assert.True(ticket.ScaleReadsThinner);
    }
}
