using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class FilmClosingTests
{
    private static Coat Coat(double share = 0.7, Carrier carrier = Carrier.Water, double solids = 0.4, double film = 171.45, double thinner = 0) =>
        Invented.Coat with
        {
            WetFilm = new WetFilm(film),
            ThinnerFraction = thinner,
            Product = Invented.Clear with { VolumeSolids = solids, Drying = new Core.Jobs.Drying(carrier, share, 0.5) },
        };

    private static Room Room(double surface = 23, double air = 23, double humidity = 0.5, AirMovement movement = AirMovement.Still) =>
        Invented.Room with { Surface = new SurfaceTemperature(surface), Air = new AirTemperature(air), RelativeHumidity = humidity, AirMovement = movement };

    [Fact]
    public void At_the_sheets_own_conditions_nothing_changes() => Assert.Equal(1, FilmClosing.Of(Coat(), Room())!.Factor, 1e-12);

    [Fact]
    public void Without_shares_no_effect_is_claimed()
    {
        Assert.Null(FilmClosing.Of(Invented.Coat, Room()));
        var judged = Judging.Judge(Invented.Job).Coats[0];
        Assert.Contains(judged.OpenTimeBasis.Inputs, i => i.Value(Invented.Voices[0]).StartsWith("not counted", StringComparison.Ordinal));
    }

    /// <summary>Constant-rate stage, surface at the air's temperature: time goes as (1 − 0.5) / (1 − RH).</summary>
    [Theory]
    [InlineData(0.30, 0.714)]
    [InlineData(0.60, 1.250)]
    [InlineData(0.70, 1.667)]
    [InlineData(0.80, 2.500)]
    public void Evaporation_alone_follows_the_vapour_pressure_difference(double humidity, double factor) =>
        Assert.Equal(factor, FilmClosing.Of(Coat(share: 1), Room(humidity: humidity))!.Factor, 0.0006);

    [Fact]
    public void Past_the_switch_humidity_no_longer_counts() =>
        Assert.Equal(1, FilmClosing.Of(Coat(share: 1, solids: 0.8), Room(humidity: 0.8))!.Factor, 1e-12);

    [Fact]
    public void Humidity_does_not_hold_a_solvent_back() =>
        Assert.Equal(1, FilmClosing.Of(Coat(share: 1, carrier: Carrier.Solvent), Room(humidity: 0.8))!.Factor, 1e-12);

    [Fact]
    public void More_humid_is_never_shorter_for_water_borne() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.1, 1], Gen.Double[10, 35], Gen.Double[10, 35], Gen.Double[0.05, 0.95], Gen.Double[0.05, 0.95]).Sample((share, solids, surface, air, one, other) =>
            FilmClosing.Of(Coat(share, solids: solids), Room(surface, air, Math.Max(one, other)))!.Factor >=
            FilmClosing.Of(Coat(share, solids: solids), Room(surface, air, Math.Min(one, other)))!.Factor - 1e-12);

    [Fact]
    public void A_thicker_or_thinned_film_stays_open_longer_and_moving_air_closes_it() =>
        Gen.Select(Gen.Double[0.05, 1], Gen.Double[0.2, 0.7], Gen.Double[1.05, 1.5]).Sample((share, solids, more) =>
        {
            var sheet = FilmClosing.Of(Coat(share, solids: solids), Room())!.Factor;
            Assert.True(FilmClosing.Of(Coat(share, solids: solids, film: 171.45 * more), Room())!.Factor > sheet);
            Assert.True(FilmClosing.Of(Coat(share, solids: solids, thinner: 0.02), Room())!.Factor >= sheet - 1e-12);
            Assert.True(FilmClosing.Of(Coat(share, solids: solids), Room(movement: AirMovement.Moving))!.Factor < sheet);
        });

    [Fact]
    public void Counted_air_replaces_the_note_that_it_is_not_counted()
    {
        var judged = Judging.Judge(Invented.Job with { System = [Coat()], Room = Room(movement: AirMovement.Moving) }).Coats[0];
        Assert.Contains(judged.Reasons, r => r.Code == "FilmClosesSooner");
        Assert.DoesNotContain(judged.Reasons, r => r.Code == "MovingAirDries");
        Said.InEveryVoice([.. judged.Reasons.SelectMany(r => new[] { r.Text, r.Remedy }), .. judged.OpenTimeBasis.Inputs.Select(i => i.Name)]);
    }
}
