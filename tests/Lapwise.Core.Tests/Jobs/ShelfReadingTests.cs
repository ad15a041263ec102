using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply;

namespace Lapwise.Core.Tests.Jobs;

public sealed class ShelfReadingTests
{
    private static ShelfEntryDocument Received(string pack = "p", int? count = null, string? expires = "2027-02-01") => new()
    {
        Id = "r-" + pack, On = "2026-11-20", Kind = ShelfEntryKind.Received, Pack = pack, Product = "clear", Lot = "L1", Size = "900 mL", Count = count, Expires = expires, Price = "84",
    };

    private static ShelfEntryDocument Then(ShelfEntryKind kind, string on, string pack = "p") => new() { Id = $"{kind}-{on}-{pack}", On = on, Kind = kind, Pack = pack };

    private static ShelfRead Read(params IReadOnlyList<ShelfEntryDocument> entries) =>
        ShelfReading.Read(new ShelfDocument { Entries = entries }, [Invented.Clear], UnitSystem.Metric);

    private static Pack Only(ShelfRead read)
    {
        Assert.Empty(read.Faults);
        return Assert.Single(read.Shelf.Packs);
    }

    [Fact]
    public void A_receipt_stands_as_packs_of_A_and_B_at_the_ratio()
    {
        var read = Read(Received(count: 3));
        Assert.Equal(["p.1", "p.2", "p.3"], read.Shelf.Packs.Select(p => p.Id));
        Assert.All(read.Shelf.Packs, p => Assert.Equal((600.0, 300.0), (Math.Round(p.Parts[0].LeftMl, 6), Math.Round(p.Parts[1].LeftMl, 6))));
    }

    [Fact]
    public void Opening_starts_its_own_last_day_and_never_a_later_one()
    {
        Assert.Equal(new DateOnly(2026, 12, 20), Only(Read(Received(), Then(ShelfEntryKind.Opened, "2026-11-20") with { Expires = "2026-12-20" })).Expires);
        Assert.Equal(new DateOnly(2027, 2, 1), Only(Read(Received(), Then(ShelfEntryKind.Opened, "2026-11-20") with { Expires = "2028-01-01" })).Expires);
    }

    [Fact]
    public void What_is_taken_is_gone_and_a_count_sets_it_right()
    {
        var taken = Then(ShelfEntryKind.Taken, "2026-11-22") with { A = "200 mL", B = "100 mL", Job = "Kitchen" };
        Assert.Equal(600, Only(Read(Received(), taken)).UsableMl, 6);
        Assert.Equal(300, Only(Read(Received(), taken, Then(ShelfEntryKind.Counted, "2026-11-23") with { A = "390 mL", B = "100 mL" })).UsableMl, 6);
    }

    // 4 : 2 : 1.5 by volume fills a pack of 900 mL with 480, 240 and 180 mL.
    private static readonly Product Three = Invented.Clear with { Mix = new MixRatio(MixBasis.Volume, 4, 2, 1.5) };

    private static Pack OfThree(ShelfEntryDocument then)
    {
        var read = ShelfReading.Read(new ShelfDocument { Entries = [Received(), then] }, [Three], UnitSystem.Metric);
        return Only(read);
    }

    [Fact]
    public void Of_three_parts_each_has_its_own_rest_and_the_scarcest_decides()
    {
        var pack = OfThree(Then(ShelfEntryKind.Counted, "2026-11-22") with { A = "400 mL", B = "200 mL", C = "60 mL" });
        Assert.Equal([("A", 400.0), ("B", 200.0), ("C", 60.0)], pack.Parts.Select(p => (p.Name, Math.Round(p.LeftMl, 6))));
        // 60 mL of C is a third of what came in.
        Assert.Equal(300, pack.UsableMl, 6);
    }

    [Fact]
    public void A_third_part_that_is_not_said_goes_with_A() =>
        Assert.Equal(135, OfThree(Then(ShelfEntryKind.Taken, "2026-11-22") with { A = "120 mL", B = "60 mL" }).Parts[2].LeftMl, 6);

    [Fact]
    public void The_same_entry_sent_twice_counts_once()
    {
        var taken = Then(ShelfEntryKind.Taken, "2026-11-22") with { A = "200 mL", B = "100 mL" };
        Assert.Equal(600, Only(Read(Received(), taken, taken)).UsableMl, 6);
    }

    [Fact]
    public void A_write_off_says_why_and_empties_the_pack()
    {
        Assert.Equal("ReasonMissing", Assert.Single(Read(Received(), Then(ShelfEntryKind.WrittenOff, "2026-11-22")).Faults).Code);
        Assert.Empty(Read(Received(), Then(ShelfEntryKind.WrittenOff, "2026-11-22") with { Why = "frozen in the van" }).Shelf.Packs);
    }

    [Fact]
    public void An_expired_lot_is_refused_until_the_maker_dates_it_anew()
    {
        var late = Then(ShelfEntryKind.Taken, "2027-03-01") with { A = "200 mL", B = "100 mL" };
        var fault = Assert.Single(Read(Received(), late).Faults);
        Assert.Equal(("entries[1]", "LotExpired"), (fault.Path, fault.Code));
        Assert.Contains("Feb 1, 2027", fault.Say(Voice.Default));

        var redated = Then(ShelfEntryKind.Redated, "2027-02-15") with { Expires = "2027-06-01", Why = "letter from the maker" };
        Assert.Equal(600, Only(Read(Received(), redated, late)).UsableMl, 6);
    }

    [Fact]
    public void A_faulty_entry_changes_nothing_and_those_after_it_still_count()
    {
        var tooMuch = Then(ShelfEntryKind.Taken, "2026-11-22") with { A = "2 L", B = "1 L" };
        var read = Read(Received(), tooMuch, Then(ShelfEntryKind.Taken, "2026-11-23") with { A = "200 mL", B = "100 mL" });
        Assert.Equal("MoreThanLeft", Assert.Single(read.Faults).Code);
        Assert.Equal(600, Assert.Single(read.Shelf.Packs).UsableMl, 6);
    }

    public static TheoryData<string, ShelfEntryDocument> Offenders => new()
    {
        { "IdMissing", Received() with { Id = "" } },
        { "DayNotRead", Received() with { On = "25/11/2026" } },
        { "ProductUnknown", Received() with { Product = "varnish" } },
        { "CountOutOfRange", Received() with { Count = 0 } },
        { "UnitUnknown", Received() with { Size = "900 bottles" } },
        { "PackNotNew", Received("") },
        { "PackUnknown", Then(ShelfEntryKind.Opened, "2026-11-22", "q") },
    };

    [Theory, MemberData(nameof(Offenders))]
    public void Bad_input_is_a_fault_with_its_place(string code, ShelfEntryDocument entry)
    {
        var fault = Assert.Single(Read(entry).Faults, f => f.Code == code);
        Assert.StartsWith("entries[0]", fault.Path);
        Assert.All(Invented.Voices, v => Assert.False(string.IsNullOrWhiteSpace(fault.Say(v))));
    }

    [Fact]
    public void The_low_list_counts_what_is_kept_back_and_what_is_coming()
    {
        var shelf = ShelfReading.Read(
            new ShelfDocument { Entries = [Received(), Received("old", expires: "2026-11-21")], Keep = [new KeepDocument { Product = "clear", Least = "1 L" }] },
            [Invented.Clear], UnitSystem.Metric).Shelf;
        var level = Assert.Single(LowStock.Levels(shelf, [], new DateOnly(2026, 11, 25)));
        Assert.True(level.IsLow);
        Assert.Equal((900.0, 900.0, 1000.0), (Math.Round(level.UsableMl, 6), Math.Round(level.ExpiredMl, 6), level.KeepMl));
        Assert.False(Assert.Single(LowStock.Levels(shelf with { Keeps = [] }, [], new DateOnly(2026, 11, 25))).IsLow);
    }
}
