using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;
using Lapwise.Core.Supply.Picking;

namespace Lapwise.Core.Tests.Supply.Picking;

public sealed class LotPickingTests
{
    private static readonly DateOnly Day = new(2026, 11, 30);

    private static JobSupply Batches(string? color, params IEnumerable<double> volumes)
    {
        var coat = Invented.Coat with { Color = color };
        IReadOnlyList<BatchTicket> tickets = [.. volumes.Select((ml, i) => new BatchTicket($"B{i + 1}", ml, [new("A", ml * 2 / 3, 0), new("B", ml / 3, 0)], 0, 0, 0, 0))];
        return new JobSupply([new CoatSupply(coat, 0, 0, tickets, [], 0, 0, [], new Basis("", [], Sources.Trade))]);
    }

    private static Pack Pack(string id, double ml, string lot, int? lastDay, string? color = null, bool open = false) =>
        new(id, Shade.Of("clear", color), lot, ml, lastDay is { } d ? Day.AddDays(d) : null, open ? Day.AddDays(-5) : null, [new PackPart("A", 2.0 / 3, ml * 2 / 3), new PackPart("B", 1.0 / 3, ml / 3)]);

    private static CoatPick Pick(JobSupply supply, params IReadOnlyList<Pack> packs) => Assert.Single(LotPicking.Pick(supply, new Shelf(packs, []), _ => Day));

    [Fact]
    public void First_expired_goes_first_and_an_opened_pack_before_a_closed_one()
    {
        var pick = Pick(Batches(null, 300, 300), Pack("late", 900, "L3", 90), Pack("closed", 200, "L2", 10), Pack("open", 200, "L1", 10, open: true));
        Assert.Equal([("open", 200.0), ("closed", 100)], pick.Batches[0].Packs.Select(p => (p.Pack.Id, Math.Round(p.Ml, 6))));
        Assert.Equal([("closed", 100.0), ("late", 200)], pick.Batches[1].Packs.Select(p => (p.Pack.Id, Math.Round(p.Ml, 6))));
    }

    [Fact]
    public void An_expired_lot_is_refused_by_name_and_the_shortage_said()
    {
        var pick = Pick(Batches(null, 300), Pack("old", 900, "L7", -1));
        Assert.Empty(pick.Batches[0].Packs);
        Assert.Equal(300, pick.Batches[0].MissingMl, 6);
        var refused = Assert.Single(pick.Reasons, r => r.Code == "LotExpired");
        Assert.Equal(Limit.AtYourWord, refused.Limit);
        Assert.Contains("L7", refused.Text(Voice.Default));
        Assert.Contains("Nov 29, 2026", refused.Text(Voice.Default));
        Assert.Contains(pick.Reasons, r => r.Code == "ShelfRunsShort");
    }

    [Fact]
    public void The_last_day_is_still_good() => Assert.Empty(Pick(Batches(null, 300), Pack("p", 900, "L1", 0)).Reasons);

    [Fact]
    public void A_colour_out_of_two_lots_is_boxed_and_a_clear_is_not()
    {
        Assert.Contains(Pick(Batches("blue", 300), Pack("a", 200, "L1", 9, "blue"), Pack("b", 200, "L2", 9, "Blue")).Reasons, r => r.Code == "BoxTheColour");
        Assert.DoesNotContain(Pick(Batches("blue", 300), Pack("a", 200, "L1", 9, "blue"), Pack("b", 200, "L1", 9, "blue")).Reasons, r => r.Code == "BoxTheColour");
        Assert.Contains(Pick(Batches(null, 300), Pack("a", 200, "L1", 9), Pack("b", 200, "L2", 9)).Reasons, r => r.Code == "LotsMeet");
    }

    [Fact]
    public void Nothing_is_picked_twice_and_nothing_is_lost() =>
        Gen.Select(Gen.Double[10, 900].Array[1, 6], Gen.Select(Gen.Double[10, 900], Gen.Int[-3, 30]).Array[0, 5]).Sample((batches, packs) =>
        {
            var pick = Pick(Batches(null, batches), [.. packs.Select((p, i) => Pack($"p{i}", p.Item1, $"L{i}", p.Item2))]);
            var taken = pick.Batches.SelectMany(b => b.Packs).GroupBy(p => p.Pack.Id).ToDictionary(g => g.Key, g => g.Sum(p => p.Ml));
            Assert.All(taken, t => Assert.True(t.Value <= packs[int.Parse(t.Key[1..])].Item1 + 1e-6 && packs[int.Parse(t.Key[1..])].Item2 >= 0));
            Assert.All(pick.Batches.Select((b, i) => (b, i)), b => Assert.Equal(batches[b.i], b.b.Packs.Sum(p => p.Ml) + b.b.MissingMl, 2e-3));
            // What is short is short only where the shelf is empty of what may be used.
            if (pick.Batches.Sum(b => b.MissingMl) > 0.01) Assert.Equal(packs.Where(p => p.Item2 >= 0).Sum(p => p.Item1), taken.Values.Sum(), 0.05);
        });
}
