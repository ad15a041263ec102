using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Conditions;

public sealed class JudgingTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Metric);

    private static CoatConditions Judge(Room room, Coat? coat = null) =>
        Judging.Judge(Invented.Job with { Room = room, System = [coat ?? Invented.Coat] }).Coats[0];

    private static Room Room(double air = 24, double humidity = 0.45, double surface = 23, double material = 23) =>
        Invented.Room with { Air = new AirTemperature(air), RelativeHumidity = humidity, Surface = new SurfaceTemperature(surface), Material = new MaterialTemperature(material) };

    private static Coat With(Func<Product, Product> change) => Invented.Coat with { Product = change(Invented.Clear) };

    [Fact]
    public void Nothing_speaks_against_a_room_inside_every_limit()
    {
        var coat = Judge(Room());
        Assert.Empty(coat.Reasons);
        Assert.True(coat.MayCoat);
    }

    [Fact]
    public void The_dew_margin_is_held_against_coating() => Assert.All(Rows("limits/dew-margin.txt"), row =>
    {
        var coat = Judge(Room(air: 20, humidity: 0.60, surface: Number(row[0])), With(p => p with { Limits = p.Limits with { DewMarginC = Number(row[1]), SurfaceLeastC = 5 } }));

        Assert.Equal(row[2] is "yes", coat.MayCoat);
        if (!coat.MayCoat) Assert.Equal(("SurfaceNearDewPoint", Limit.Never), (coat.Reasons[0].Code, coat.Reasons[0].Limit));
    });

    [Theory]
    [InlineData(3, "iso-8502-4")]
    [InlineData(5 / 1.8, "mil-hdbk-1110")]
    [InlineData(4, "entered")]
    public void The_dew_margin_names_the_rule_it_comes_from(double marginC, string source) =>
        Assert.Equal(source, Judge(Room(), With(p => p with { Limits = p.Limits with { DewMarginC = marginC } })).DewMarginBasis.Source.Id);

    [Theory]
    [InlineData(14.9, 0.45, "AirTooCold")]
    [InlineData(30.1, 0.40, "AirTooWarm")]
    [InlineData(20.0, 0.76, "AirTooHumid")]
    public void Room_outside_the_sheet_works_only_at_the_finishers_word(double air, double humidity, string code)
    {
        var coat = Judge(Room(air: air, humidity: humidity, surface: 24));
        Assert.False(coat.MayCoat);
        Assert.Contains(coat.Reasons, r => r.Code == code && r.Limit == Limit.AtYourWord);
    }

    /// <summary>A sheet that names one range of temperature means what is coated too.</summary>
    [Theory]
    [InlineData(35, "SurfaceTooWarm")]
    [InlineData(14, "SurfaceTooCold")]
    public void A_top_outside_the_sheet_is_said_though_the_air_is_fine(double surface, string code)
    {
        var reason = Assert.Single(Judge(Room(humidity: 0.35, surface: surface)).Reasons, r => r.Limit != Limit.Note);
        Assert.Equal((code, Limit.AtYourWord), (reason.Code, reason.Limit));
        Assert.DoesNotContain(Judge(Room(surface: WholeNumbers(reason.Remedy(English))[0])).Reasons, r => r.Code == code);
    }

    [Fact]
    public void A_sheet_may_give_the_top_limits_of_its_own()
    {
        var wide = With(p => p with { Limits = p.Limits with { SurfaceMostC = 40 } });
        Assert.DoesNotContain(Judge(Room(surface: 35), wide).Reasons, r => r.Code == "SurfaceTooWarm");
        Assert.Contains(Judge(Room(surface: 41), wide).Reasons, r => r.Code == "SurfaceTooWarm");
    }

    [Fact]
    public void Every_broken_limit_is_said_hardest_first()
    {
        var coat = Judge(Room(air: 14, humidity: 0.9, surface: 13));
        Assert.Equal(["SurfaceNearDewPoint", "AirTooCold", "SurfaceTooCold", "AirTooHumid"], coat.Reasons.Where(r => r.Limit != Limit.Note).Select(r => r.Code));
    }

    [Theory]
    [InlineData(20, 0.60, 16, "DewMarginNarrow")]
    [InlineData(15.5, 0.45, 23, "AirNearLimit")]
    [InlineData(20, 0.72, 23, "HumidityNearLimit")]
    public void A_limit_that_is_near_is_noted_and_does_not_forbid(double air, double humidity, double surface, string code)
    {
        var coat = Judge(Room(air: air, humidity: humidity, surface: surface));
        Assert.True(coat.MayCoat);
        Assert.Contains(coat.Reasons, r => r.Code == code);
    }

    /// <summary>Each number a remedy names is tried: doing as advised lifts the refusal.</summary>
    [Theory]
    [InlineData(20, 0.60, 14)]
    [InlineData(27, 0.70, 19.3)]
    [InlineData(16, 0.74, 11)]
    public void Doing_as_the_dew_remedy_says_lifts_the_refusal(double air, double humidity, double surface)
    {
        var remedy = Judge(Room(air, humidity, surface)).Reasons.Single(r => r.Code == "SurfaceNearDewPoint").Remedy(English);
        var numbers = WholeNumbers(remedy);

        Assert.DoesNotContain(Judge(Room(air, humidity, numbers[0])).Reasons, r => r.Limit == Limit.Never);
        Assert.DoesNotContain(Judge(Room(air, numbers[1] / 100, surface)).Reasons, r => r.Limit == Limit.Never);
    }

    [Fact]
    public void Doing_as_the_humidity_remedy_says_lifts_the_refusal()
    {
        var humid = Room(air: 20, humidity: 0.85);
        var remedy = Judge(humid).Reasons.Single(r => r.Code == "AirTooHumid").Remedy(English);
        var numbers = WholeNumbers(remedy);

        Assert.DoesNotContain(Judge(Room(air: 20, humidity: numbers[0] / 100)).Reasons, r => r.Code == "AirTooHumid");
        var warmed = Dew.HumidityAt(numbers[1], Dew.PointC(20, 0.85));
        Assert.DoesNotContain(Judge(Room(air: numbers[1], humidity: warmed)).Reasons, r => r.Code == "AirTooHumid");
    }

    private static IReadOnlyList<double> WholeNumbers(string text) =>
        [.. text.Split(' ', ',').Where(word => word.All(char.IsAsciiDigit) && word.Length > 0).Select(Number)];

    [Fact]
    public void Open_time_follows_the_surface_and_pot_life_the_material()
    {
        var coat = Judge(Room(surface: 23, material: 32));
        Assert.Equal(11 * 60, coat.OpenTime.Seconds, 1e-6);
        Assert.Equal(26 * 60, coat.PotLife.Seconds, 1e-6);
        Assert.Equal((Origin.DataSheet, Origin.DataSheet), (coat.OpenTime.Origin, coat.PotLife.Origin));

        var swapped = Judge(Room(surface: 29, material: 23));
        Assert.True(swapped.OpenTime.Seconds < 11 * 60);
        Assert.Equal(45 * 60, swapped.PotLife.Seconds, 1e-6);
    }

    [Fact]
    public void A_test_board_replaces_the_sheet_and_says_so()
    {
        var coat = Judge(Room(surface: 29), Invented.Coat with { TestBoard = new OpenTime(480, Origin.Guess) });
        Assert.Equal(new OpenTime(480, Origin.TestBoard), coat.OpenTime);
        Assert.Empty(coat.Reasons);
    }

    [Fact]
    public void Without_a_sheet_the_times_are_called_a_guess()
    {
        var coat = Judge(Room(), With(p => p with { OpenTime = [], PotLife = [] }));
        Assert.Equal((Origin.Guess, Origin.Guess), (coat.OpenTime.Origin, coat.PotLife.Origin));
        Assert.Equal(["OpenTimeGuessed", "PotLifeGuessed"], coat.Reasons.Select(r => r.Code));
        Assert.Equal(SourceStanding.Assumed, coat.OpenTimeBasis.Source.Standing);
        Assert.True(coat.MayCoat);
    }

    [Theory]
    [InlineData(23, new string[0])]
    [InlineData(21.1, new string[0])]
    [InlineData(20.9, new[] { "OpenTimeBeyondSheet" })]
    [InlineData(34.1, new[] { "SurfaceTooWarm", "OpenTimeBeyondSheet" })]
    public void Reading_a_sheet_beyond_its_points_is_noted(double surface, string[] codes) =>
        Assert.Equal(codes, Judge(Room(surface: surface)).Reasons.Select(r => r.Code));

    [Fact]
    public void Carrying_a_single_point_by_the_rule_is_noted()
    {
        var coat = Judge(Room(material: 31), With(p => p with { PotLife = [new TimeAt(7200, 21)] }));
        Assert.Equal(["PotLifeByRule"], coat.Reasons.Select(r => r.Code));
        Assert.Equal(3600, coat.PotLife.Seconds, 1e-6);
        Assert.Same(Sources.Ufgs09971, coat.PotLifeBasis.Source);
    }

    [Fact]
    public void A_sheet_that_contradicts_itself_is_noted() =>
        Assert.Contains(Judge(Room(), With(p => p with { OpenTime = [new TimeAt(300, 20), new TimeAt(600, 30)] })).Reasons, r => r.Code == "OpenTimeSheetContradicts");

    [Fact]
    public void A_hidden_end_says_that_only_the_clock_tells() =>
        Assert.Contains(Judge(Room(), With(p => p with { EndsBy = EndOfPotLife.Hidden })).Reasons, r => r.Code == "OnlyTheClockTells" && r.Limit == Limit.Note);

    [Fact]
    public void A_life_of_a_stated_mass_shortens_the_pot_life_of_a_large_batch_and_shows_its_fit()
    {
        var epoxy = With(p => p with { MassLives = [new MassLife(100, 45 * 60, 23)] });
        var coat = Judge(Room(), epoxy);

        Assert.True(coat.PotLife.Seconds < 40 * 60);
        Assert.Equal(coat.LargestBatch!.PourOutByS, coat.PotLife.Seconds);
        Assert.Contains(coat.Reasons, r => r.Code == "BatchHeatsItself");
        Assert.Contains(coat.PotLifeBasis.Inputs, i => i.Value(English).Contains("fit misses by 0", StringComparison.Ordinal));
        Assert.Same(Sources.HeatBalance, coat.PotLifeBasis.Source);
    }

    [Fact]
    public void A_hidden_end_is_never_reckoned_from_heat() =>
        Assert.Null(Judge(Room(), With(p => p with { EndsBy = EndOfPotLife.Hidden, MassLives = [new MassLife(100, 2700, 23)] })).LargestBatch);

    [Fact]
    public void Without_a_stated_mass_a_mix_that_overheats_says_that_the_mass_is_not_counted() =>
        Assert.Contains(Judge(Room(), With(p => p with { EndsBy = EndOfPotLife.Overheats })).Reasons, r => r.Code == "MassNotCounted");

    [Fact]
    public void Moving_air_is_noted_beside_the_sheets_time_and_not_beside_a_test_board()
    {
        var moving = Room() with { AirMovement = AirMovement.Moving };
        Assert.Contains(Judge(moving).Reasons, r => r.Code == "MovingAirDries");
        Assert.Empty(Judge(moving, Invented.Coat with { TestBoard = new OpenTime(480, Origin.TestBoard) }).Reasons);
    }

    /// <summary>UFGS-09971, 3.7.1.3 (read): high humidity shortens the pot life of polyurethane.</summary>
    [Fact]
    public void Humid_air_shortens_an_isocyanate_mix()
    {
        var isocyanate = With(p => p with { Hazards = [Hazard.Isocyanate] });
        Assert.Contains(Judge(Room(humidity: 0.65), isocyanate).Reasons, r => r.Code == "HumidityShortensPotLife");
        Assert.DoesNotContain(Judge(Room(humidity: 0.65)).Reasons, r => r.Code == "HumidityShortensPotLife");
    }

    [Fact]
    public void Near_flammable_vapour_the_heating_advice_warns_of_flame()
    {
        var flammable = With(p => p with { Hazards = [Hazard.FlammableVapour] });
        Assert.Contains("catch fire", Judge(Room(air: 10), flammable).Reasons.Single(r => r.Code == "AirTooCold").Remedy(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_missed_by_little_does_not_read_like_the_limit()
    {
        var us = new Voice(Language.English, UnitSystem.Us);
        var text = Judge(Room(air: 14.8)).Reasons.Single(r => r.Code == "AirTooCold").Text(us);
        Assert.Equal("The air is at 58.6 °F; the data sheet asks for at least 59 °F.", text);
    }

    [Fact]
    public void Every_reason_and_input_is_said_in_both_languages_and_unit_systems()
    {
        Coat[] coats =
        [
            With(p => p with { EndsBy = EndOfPotLife.Hidden, Hazards = [Hazard.Isocyanate, Hazard.FlammableVapour] }),
            With(p => p with { OpenTime = [], PotLife = [] }),
            With(p => p with { OpenTime = [new TimeAt(300, 20), new TimeAt(600, 30)], PotLife = [new TimeAt(7200, 21)] }),
        ];
        Room[] rooms = [Room(10, 0.9, 9, 40) with { AirMovement = AirMovement.Moving }, Room(33, 0.8, 40), Room(15.2, 0.72, 13.5)];
        var judged = (from coat in coats from room in rooms select Judge(room, coat)).ToList();
        var reasons = judged.SelectMany(c => c.Reasons).ToList();

        Assert.Equal(18, reasons.Select(r => r.Code).Distinct(StringComparer.Ordinal).Count());
        Said.InEveryVoice([.. reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
        Said.InEveryVoice([.. judged.SelectMany(c => c.OpenTimeBasis.Inputs.Concat(c.PotLifeBasis.Inputs).Concat(c.DewMarginBasis.Inputs)).Select(i => i.Name)]);
    }
}
