using CsCheck;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;

namespace Lapwise.Core.Tests.Conditions.Vapour;

public sealed class RoomVapourTests
{
    private static readonly Gen<RoomVapour> AnyRoom =
        Gen.Select(Gen.Double[10, 200], Gen.Double[0, 0.2], Gen.Double[1e-7, 1e-3], Gen.Double[10, 7200]).Select((v, q, g, s) => new RoomVapour(v, q, g, s));

    /// <summary>V dC/dt = G − Q C, stepped by Euler, comes to the closed form.</summary>
    [Fact]
    public void The_curve_is_what_its_balance_makes() => AnyRoom.Sample(room =>
    {
        var (c, end) = (0.0, room.EvaporatingS * 2);
        const int n = 20_000;
        for (var i = 0; i < n; i++) c += end / n * (((i * end / n) < room.EvaporatingS ? room.VapourM3PerS : 0) - (room.AirM3PerS * c)) / room.RoomM3;
        Assert.Equal(c, room.ShareAt(end), 0.003 * room.PeakShare);
    }, iter: 20);

    [Fact]
    public void Without_fresh_air_all_of_it_stays() => AnyRoom.Sample(room =>
    {
        var closed = room with { AirM3PerS = 0 };
        Assert.Equal(1, closed.ShareAt(1e6) * closed.RoomM3 / (closed.VapourM3PerS * closed.EvaporatingS), 1e-9);
        Assert.True(closed.ClearAfterS(closed.PeakShare / 2) is null);
    });

    [Fact]
    public void Evaporating_for_ever_it_comes_to_the_steady_state() =>
        Assert.Equal(1, (new RoomVapour(40, 0.05, 1e-5, 1e9).ShareAt(1e8)) / (1e-5 / 0.05), 1e-9);

    [Fact]
    public void The_mean_is_that_of_the_curve() => Gen.Select(AnyRoom, Gen.Double[100, 30_000]).Sample((room, over) =>
    {
        const int n = 4000;
        var mean = Enumerable.Range(0, n).Average(i => room.ShareAt((i + 0.5) * over / n));
        Assert.Equal(mean, room.MeanShare(over), 0.003 * room.PeakShare);
    }, iter: 40);

    [Fact]
    public void It_has_cleared_when_it_says() => Gen.Select(AnyRoom, Gen.Double[0.05, 0.9]).Sample((room, part) =>
    {
        if (room.ClearAfterS(part * room.PeakShare) is { } seconds) Assert.Equal(part, room.ShareAt(seconds) / room.PeakShare, 1e-9);
    });

    [Fact]
    public void More_fresh_air_is_never_more_vapour() => Gen.Select(AnyRoom, Gen.Double[0.001, 0.2], Gen.Double[1, 20_000]).Sample((room, more, at) =>
        (room with { AirM3PerS = room.AirM3PerS + more }).ShareAt(at) <= room.ShareAt(at) * (1 + 1e-9));

    [Fact]
    public void Dilution_air_holds_the_steady_state_at_its_share() => Gen.Select(Gen.Double[0.001, 1], Gen.Double[1e-5, 1e-2]).Sample((mlPerS, share) =>
    {
        var air = DilutionAir.IdealM3PerS(Solvents.Acetone, mlPerS, share, 21);
        Assert.Equal(1, new RoomVapour(40, air, RoomVapour.VapourM3(Solvents.Acetone, mlPerS, 21), 1).SteadyShare / share, 1e-9);
    });

    [Fact]
    public void A_pint_of_acetone_in_a_small_closed_room_is_never_and_says_why()
    {
        var reasons = VapourReasons.Of(Solvents.Acetone, RoomVapour.Of(Solvents.Acetone, 473, 900, 30, 0, 21));
        Assert.Equal("VapourNearFlammable", reasons[0].Code);
        Assert.Contains(reasons, r => r.Code == "NotAFireClearance");
        Assert.Contains(reasons, r => r.Code == "OverExposureLimit");
        Said.InEveryVoice([.. reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
    }

    [Fact]
    public void However_little_the_fire_note_stays() =>
        Assert.Equal(["NotAFireClearance"], VapourReasons.Of(Solvents.Acetone, RoomVapour.Of(Solvents.Acetone, 1, 600, 60, 6, 21)).Select(r => r.Code));

    [Fact]
    public void Every_solvent_limit_and_statement_is_said_in_both_languages_and_stands_in_order()
    {
        Assert.All(Solvents.All.Where(s => s.LowerFlammable is not null), s => Assert.True(s.LowerFlammable < s.UpperFlammable));
        Said.InEveryVoice([.. Solvents.All.Select(s => s.Name), .. Enum.GetValues<LimitTime>().Select<LimitTime, Phrase>(t => v => Solvents.Say(t, v))]);
        Said.InEveryVoice([.. Ghs.All.Select(s => s.Text), v => Ghs.Say(SignalWord.Danger, v), v => Ghs.Say(SignalWord.Warning, v)]);
        Assert.All(Enum.GetValues<Hazard>(), h => Assert.NotNull(Ghs.Usual(h)));
    }
}
