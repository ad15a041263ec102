using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Tests.Conditions.Vapour;

public sealed class CoatVapourTests
{
    private static readonly Coat Wiped = Invented.Coat with { Wipe = new Wipe(SolventName.Acetone, 2 * Invented.MlPerUsFluidOunce, 600) };

    private static CoatConditions Judge(Coat coat, double? roomM3, double changes = 6, double flatM2 = 4)
    {
        var job = Invented.Job with { System = [coat], Room = Invented.Room with { VolumeM3 = roomM3, AirChangesPerHour = changes } };
        return Judging.Judge(job, Estimating.Estimate(job, Invented.Measured(flatM2))).Coats[0];
    }

    private static Coat WithSolvent(double vocGPerL) => Invented.Coat with { Product = Invented.Clear with { Voc = [new(vocGPerL, 0, 0), new(0, 0, 0)], Solvent = SolventName.Xylene } };

    /// <summary>Worked from the published dilution example: 2 US fl oz of acetone are 0.686 ft³ of vapour at 70 °F; in a closed 1440 ft³ that is 476 ppm.</summary>
    [Fact]
    public void A_wipe_in_a_closed_room_is_the_published_share_of_its_air()
    {
        var room = Invented.Room with { VolumeM3 = 1440 * 0.028316846592, Air = new(21.1) };
        var vapour = Assert.Single(CoatVapour.Of(Wiped, room, null, 600));
        Assert.Equal(VapourFrom.Wipe, vapour.From);
        Assert.Equal(476, vapour.PeakPpm, 1.0);
        Assert.Equal(0.019, vapour.ShareOfFlammable!.Value, 5e-4);
        Assert.Null(vapour.ClearAfterS);
    }

    /// <summary>By hand: 780 mL of need at 200 g/L (2/3 of 300 g/L in A) give off 156 g of xylene, 180.6 mL.</summary>
    [Fact]
    public void A_coat_gives_off_all_its_voc_within_its_open_time()
    {
        var vapour = Assert.Single(Judge(WithSolvent(300), 40).Vapours);
        Assert.Equal((VapourFrom.Coat, 180.6), (vapour.From, Math.Round(vapour.LiquidMl, 1)));
        Assert.Equal(11 * 60, vapour.Room.EvaporatingS, 1e-6);
    }

    /// <summary>A coat of an hour and a half is not clear some minutes after its first section: the time counts from its last, in whole minutes upwards.</summary>
    [Fact]
    public void The_air_of_a_coat_clears_counted_from_the_last_of_it()
    {
        var vapours = Judge(WithSolvent(200) with { Wipe = Wiped.Wipe }, 20).Vapours;
        Assert.Contains(" min after the wipe began.", vapours.Single(x => x.From is VapourFrom.Wipe).Line(Voice.Default), StringComparison.Ordinal);
        Assert.Matches("(min|h) after the last of it is on\\.", vapours.Single(x => x.From is VapourFrom.Coat).Line(Voice.Default));
    }

    /// <summary>However a coat is spread over time, so long after its last part the air holds no more than the whole at once would leave.</summary>
    [Fact]
    public void Parts_that_go_on_one_after_another_clear_no_later_after_the_last() =>
        Gen.Select(Gen.Double[10, 300], Gen.Double[0.5, 20], Gen.Double[60, 1800], Gen.Double[0, 5400].Array[1, 8]).Sample((m3, changes, openS, beforeLast) =>
        {
            RoomVapour Of(double ml) => RoomVapour.Of(Solvents.Xylene, ml, openS, m3, changes, 22);
            var limit = Of(100).PeakShare / 3;
            var after = Of(100).ClearAfterS(limit)!.Value;
            var parts = Of(100.0 / (beforeLast.Length + 1));
            Assert.True(beforeLast.Append(0).Sum(s => parts.ShareAt(after + s)) <= limit * (1 + 1e-9));
        });

    [Fact]
    public void What_passes_a_limit_speaks_against_the_coat_and_near_the_flammable_limit_it_never_goes()
    {
        Assert.Contains(Judge(WithSolvent(300), 40).Reasons, r => r.Code == "OverExposureLimit" && r.Limit == Limit.AtYourWord);
        var small = Judge(WithSolvent(600), 12, changes: 0);
        Assert.Contains(small.Reasons, r => r.Code == "VapourNearFlammable" && r.Limit == Limit.Never);
        Assert.False(small.MayCoat);
    }

    [Fact]
    public void More_fresh_air_is_never_more_vapour() => Gen.Select(Gen.Double[10, 300], Gen.Double[0, 20], Gen.Double[0.1, 20]).Sample((m3, changes, more) =>
        Assert.True(Judge(WithSolvent(200), m3, changes + more).Vapours[0].PeakPpm <= Judge(WithSolvent(200), m3, changes).Vapours[0].PeakPpm * (1 + 1e-12)));

    [Fact]
    public void What_is_missing_is_asked_for_by_name()
    {
        string Missing(Coat coat, double? room) => Judge(coat, room).Reasons.SingleOrDefault(r => r.Code == "VapourNotReckoned")?.Text(Voice.Default) ?? "";
        Assert.Contains("volume of the room", Missing(Wiped, null), StringComparison.Ordinal);
        Assert.Contains("VOC", Missing(Invented.Coat, 40), StringComparison.Ordinal);
        Assert.Contains("what its solvent mostly is", Missing(Invented.Coat, 40), StringComparison.Ordinal);
        Assert.Equal("", Missing(WithSolvent(100), 40));
        Assert.Equal("", Missing(Invented.Coat with { Product = Invented.Clear with { Hazards = [] } }, null));
    }

    [Fact]
    public void The_caution_about_fire_is_said_once_for_a_coat_and_its_wipe() =>
        Assert.Single(Judge(WithSolvent(20) with { Wipe = Wiped.Wipe }, 400, changes: 20).Reasons, r => r.Code == VapourReasons.NotAClearance);

    [Fact]
    public void Every_vapour_is_said_in_both_languages_and_unit_systems()
    {
        var vapours = ((double[])[0, 6, 60]).SelectMany(changes => Judge(WithSolvent(200) with { Wipe = Wiped.Wipe }, 60, changes).Vapours).ToList();
        Said.InEveryVoice([.. vapours.Select(x => (Phrase)x.Line), .. Judge(Wiped, null).Reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
    }
}
