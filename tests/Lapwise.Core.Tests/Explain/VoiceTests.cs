using System.Text.RegularExpressions;
using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Explain;

/// <summary>What is shown can be typed back: the readers find the same value, to the step that is shown.</summary>
public sealed partial class VoiceTests
{
    private static readonly Gen<Voice> Voices = Gen.Select(Gen.Enum<Language>(), Gen.Enum<UnitSystem>(), Gen.Bool, (language, units, keeps) => new Voice(language, units) { KeepsUnits = keeps });

    [Fact]
    public void A_formula_takes_the_decimal_mark_and_keeps_its_commas()
    {
        const string Formula = "t = 243.04 γ / (17.625 − γ); a = max(e₁, e₂)…";
        Assert.Equal(Formula, new Voice(Language.English, UnitSystem.Metric).Formula(Formula));
        Assert.Equal("t = 243,04 γ / (17,625 − γ); a = max(e₁, e₂)…", new Voice(Language.Spanish, UnitSystem.Us).Formula(Formula));
        Assert.Equal("V_queda = V_entra − Σ V_sale; RH ≤ RH_máx; min_k c_k", new Voice(Language.Spanish, UnitSystem.Us).Formula("V_left = V_in − Σ V_out; RH ≤ RH_max; min_k c_k"));
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("A", "A")]
    [InlineData("A,B", "A y B")]
    [InlineData("A,B,C", "A, B y C")]
    public void Things_in_a_row_end_in_an_and(string things, string said) =>
        Assert.Equal(said, new Voice(Language.Spanish, UnitSystem.Metric).List(things.Split(',', StringSplitOptions.RemoveEmptyEntries)));

    [Theory]
    [InlineData(0, "0 laps", "0 solapes")]
    [InlineData(1, "1 lap", "1 solape")]
    [InlineData(2, "2 laps", "2 solapes")]
    public void One_of_a_thing_is_said_in_the_singular(int count, string en, string es)
    {
        foreach (var (language, said) in new[] { (Language.English, en), (Language.Spanish, es) })
            Assert.Equal(said, new Voice(language, UnitSystem.Us).Count(count, ("lap", "laps"), ("solape", "solapes")));
    }

    [Theory]
    [InlineData("Mix 3.5 gal, then wait 12 min 30 s at 25 °C.", "Mix 3.5_gal, then wait 12_min_30_s at 25_°C.")]
    [InlineData("mix by volume 2.09 : 1; kits 4 × 48 fl oz; 0 s × 10", "mix by volume 2.09_:_1; kits 4_×_48_fl_oz; 0_s ×_10")]
    [InlineData("cup 0.5 fl oz (15 mL); 6 ft²/min", "cup 0.5_fl_oz (15_mL); 6_ft²/min")]
    [InlineData("8' 4 1/2\" or 96 1/2 in wide, in 2 rows", "8'_4_1/2\" or 96_1/2_in wide, in 2 rows")]
    [InlineData(" 2  min, 12", " 2  min, 12")]
    [InlineData("on Mon Dec 7, or Dec 7, 2026, 2:05 pm; may 7 jobs", "on Mon_Dec_7, or Dec_7,_2026, 2:05_pm; may_7 jobs")]
    [InlineData("el lun 7 dic, al 24 nov 2026, 9:30", "el lun_7_dic, al 24_nov_2026, 9:30")]
    public void On_a_page_a_number_stays_with_its_unit_and_a_date_whole(string text, string kept)
    {
        var page = Voice.Default with { KeepsUnits = true };
        Assert.Equal(kept.Replace('_', UnitGap.NoBreak), page.Say(text, ""));
        Assert.Equal(text, Voice.Default.Say(text, ""));
        Assert.Equal(text, UnitGap.Plain(page.Kept(text)));
    }

    [Fact]
    public void No_quantity_parts_on_a_page() => Gen.Select(Voices, Gen.Double[0.001, 5000]).Sample(t =>
    {
        var (v, x) = (t.Item1 with { KeepsUnits = true }, t.Item2);
        string[] said =
        [
            v.Length(x), v.Run(x), v.Area(x), v.Volume(x), v.Mass(x), v.OnCup(x), v.OnSyringe(x), v.Film(x), v.Temperature(x), v.Percent(x), v.Density(x), v.VolumePerRun(x),
            v.HeatPerMass(x), v.Voc(x), v.RoomVolume(x), v.AirFlow(x), v.SpreadingRate(x), v.AreaRate(x), v.LengthRate(x), v.Money(new MoneyAmount((decimal)x, Currency.UsDollar)),
        ];
        Assert.All(said, text => Assert.DoesNotContain(" ", text, StringComparison.Ordinal));
    });

    [Theory]
    [InlineData(Language.English, UnitSystem.Us, "Mon Dec 7", "Dec 7, 2026")]
    [InlineData(Language.English, UnitSystem.Metric, "Mon 7 Dec", "7 Dec 2026")]
    [InlineData(Language.Spanish, UnitSystem.Us, "lun 7 dic", "7 dic 2026")]
    public void A_day_is_said_as_people_say_it_and_stays_on_its_line_on_a_page(Language language, UnitSystem units, string near, string written)
    {
        var (voice, day) = (new Voice(language, units), new DateOnly(2026, 12, 7));
        Assert.Equal((near, written), (voice.WeekDay(day), voice.Date(day)));
        Assert.Equal(written.Replace(' ', UnitGap.NoBreak), (voice with { KeepsUnits = true }).Date(day));
    }

    [Fact]
    public void A_sum_written_in_a_text_stays_with_the_code_of_any_currency()
    {
        Assert.All(Currency.All, c => Assert.Equal($"12,345,678.90{UnitGap.NoBreak}{c}, and", UnitGap.Keep($"12,345,678.90 {c}, and")));
        foreach (var text in new[] { "30 All of it", "2 top coats", "14 SHELVES", "3 ABC" }) Assert.Equal(text, UnitGap.Keep(text));
    }

    [Theory]
    [InlineData("1:30 min")]
    [InlineData("12 min 30 s")]
    [InlineData("1 h 5 min")]
    public void A_time_copied_from_a_page_reads_as_typed(string typed) =>
        Assert.Equal(Assert.IsType<Read<double>.Got>(Reading.Time(typed)), Reading.Time(typed.Replace(' ', UnitGap.NoBreak)));

    [Theory]
    [InlineData("3 ft2 ")]
    [InlineData("96 1/2 in²")]
    public void An_area_copied_from_a_page_reads_as_typed(string typed) =>
        Assert.Equal(Assert.IsType<Read<double>.Got>(Reading.Area(typed, UnitSystem.Us)), Reading.Area(typed.Replace(' ', UnitGap.NoBreak), UnitSystem.Us));

    [Fact]
    public void A_length_shown_reads_back_to_half_a_sixteenth_or_half_a_millimetre() =>
        ReadsBack(Gen.Double[-29, 29], (v, x) => v.Length(x), (e, u) => Reading.Length(e, u), (v, x) => v.Units == UnitSystem.Us ? 0.0254 / 32 : 0.0005);

    [Fact]
    public void A_run_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 99], (v, x) => v.Run(x), (e, u) => Reading.Length(e, u), (v, _) => v.Units == UnitSystem.Us ? 0.05 * 0.3048 : 0.005);

    [Fact]
    public void An_area_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 50], (v, x) => v.Area(x), (e, u) => Reading.Area(e, u), (v, _) => v.Units == UnitSystem.Us ? 0.05 * 0.09290304 : 0.005);

    [Fact]
    public void A_volume_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 20_000], (v, x) => v.Volume(x), (e, u) => Reading.Volume(e, u), (v, x) => (v.Units, x) switch
        {
            (UnitSystem.Us, > 3785) => 0.005 * 3785.411784,
            (UnitSystem.Us, _) => 0.05 * 29.5735295625,
            (_, >= 999) => 5,
            _ => 0.5,
        });

    [Fact]
    public void A_mass_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 5000], (v, x) => v.Mass(x), (e, u) => Reading.Mass(e, u), (v, _) => v.Units == UnitSystem.Us ? 0.05 * 28.349523125 : 0.5);

    [Fact]
    public void A_film_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 2000], (v, x) => v.Film(x), (e, u) => Reading.Film(e, u), (v, _) => v.Units == UnitSystem.Us ? 0.05 * 25.4 : 0.5);

    [Fact]
    public void A_temperature_shown_reads_back() =>
        ReadsBack(Gen.Double[-20, 90], (v, x) => v.Temperature(x), (e, u) => Reading.Temperature(e, u), (_, _) => 0.05);

    [Fact]
    public void A_temperature_difference_shown_reads_back() =>
        ReadsBack(Gen.Double[-20, 90], (v, x) => v.TemperatureDifference(x), (e, u) => Reading.TemperatureDifference(e, u), (_, _) => 0.05);

    [Fact]
    public void A_density_shown_reads_back() =>
        ReadsBack(Gen.Double[0.3, 5], (v, x) => v.Density(x), (e, _) => Reading.Density(e), (_, _) => 0.005);

    [Fact]
    public void A_share_shown_reads_back() =>
        ReadsBack(Gen.Double[0, 1], (v, x) => v.Percent(x, 1), (e, _) => Reading.Share(e), (_, _) => 0.0005);

    [Fact]
    public void A_pace_shown_reads_back()
    {
        ReadsBack(Gen.Double[0.0001, 0.1], (v, x) => v.AreaRate(x), (e, _) => Reading.AreaRate(e), (v, _) => (v.Units == UnitSystem.Us ? 0.05 * 0.09290304 : 0.005) / 60);
        ReadsBack(Gen.Double[0.0001, 0.9], (v, x) => v.LengthRate(x), (e, _) => Reading.LengthRate(e), (v, _) => (v.Units == UnitSystem.Us ? 0.05 * 0.3048 : 0.005) / 60);
    }

    [Fact]
    public void A_span_shown_reads_back() =>
        ReadsBack(Gen.Double[-400_000, 400_000], (_, x) => Voice.Span(x), (e, _) => Reading.Time(e), (_, x) => Math.Abs(x) switch { < 3599 => 0.5, < 172_799 => 60, _ => 3600 });

    [Theory]
    [InlineData(59.6, "1 min")]
    [InlineData(750, "12 min 30 s")]
    [InlineData(7500, "2 h 05 min")]
    [InlineData(86400, "24 h")]
    [InlineData(604800, "7 d")]
    [InlineData(-90, "−1 min 30 s")]
    [InlineData(-0.3, "0 s")]
    [InlineData(double.NaN, "—")]
    public void A_span_is_said_in_the_units_a_person_would_use(double seconds, string said) => Assert.Equal(said, Voice.Span(seconds));

    [Theory]
    [InlineData(0, "0\"")]
    [InlineData(2.45110, "8' 1/2\"")]
    [InlineData(2.54635, "8' 4 1/4\"")]
    [InlineData(0.0015875, "1/16\"")]
    [InlineData(-0.1016, "−4\"")]
    [InlineData(0.0001, "0.004\"")]
    public void A_length_is_said_as_a_tape_is_marked(double metres, string said) => Assert.Equal(said, Voice.Default.Length(metres));

    [Fact]
    public void What_was_not_read_is_never_shown_as_a_number()
    {
        foreach (var units in Enum.GetValues<UnitSystem>())
        {
            var voice = new Voice(Language.English, units);
            string[] said = [voice.Length(double.NaN), voice.Area(double.NaN), voice.Volume(double.NaN), voice.Temperature(double.NaN), voice.Percent(double.NaN), Voice.Clock(double.NaN)];
            Assert.All(said, s => Assert.DoesNotMatch("[0-9N]", s));
        }
    }

    [Fact]
    public void A_quarter_ounce_is_not_shown_as_three_tenths() => Assert.Equal("8.25 fl oz", Voice.Default.Volume(8.25 * 29.5735295625));

    private static void ReadsBack(
        Gen<double> values, Func<Voice, double, string> show, Func<Entry, UnitSystem, Read<double>> read, Func<Voice, double, double> step) =>
        Gen.Select(Voices, values).Sample((voice, value) =>
        {
            var shown = show(voice, value);
            if (read(shown, voice.Units).Failed(out var why, out var back)) throw new Xunit.Sdk.XunitException($"{shown}: {why.Text(Voice.Default)}");
            Assert.True(Math.Abs(back - value) <= step(voice, value) * (1 + 1e-9), $"{value} is shown as {shown} and reads back as {back}");
        });

    [Theory]
    [InlineData(Language.English, UnitSystem.Us, "8:05 am", "8:05:09 am", "8 am", "12:00 pm", "Dec 7, 2026, 8:05 am")]
    [InlineData(Language.English, UnitSystem.Metric, "8:05", "8:05:09", "8", "12:00", "7 Dec 2026, 8:05")]
    [InlineData(Language.Spanish, UnitSystem.Us, "8:05", "8:05:09", "8", "12:00", "7 dic 2026, 8:05")]
    [InlineData(Language.Spanish, UnitSystem.Metric, "8:05", "8:05:09", "8", "12:00", "7 dic 2026, 8:05")]
    public void A_time_of_day_has_twelve_hours_in_US_English_and_twenty_four_elsewhere(Language language, UnitSystem units, string hour, string second, string bare, string noon, string moment)
    {
        var (voice, at) = (new Voice(language, units), new DateTime(2026, 12, 7, 8, 5, 9, DateTimeKind.Unspecified));
        Assert.Equal((hour, second, bare, noon, moment), (voice.Hour(at), voice.HourToTheSecond(at), voice.BareHour(at), voice.HourOfDay(11.9999), voice.Moment(at)));
        Assert.DoesNotContain(' ', (voice with { KeepsUnits = true }).Hour(at));
    }

    /// <summary>Read from the source, so that a new formula is held to it too.</summary>
    [Fact]
    public void Words_below_the_line_of_a_formula_have_their_Spanish()
    {
        var spanish = new Voice(Language.Spanish, UnitSystem.Metric);
        var core = Path.Combine(RepositoryFolder.Root, "src", "Lapwise.Core");
        var words = Directory.EnumerateFiles(core, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .SelectMany(File.ReadLines).Where(l => l.Contains("Basis", StringComparison.Ordinal)).SelectMany(l => BelowInLiterals().Matches(l)).Select(m => m.Value).Distinct(StringComparer.Ordinal).ToList();
        Assert.Contains("V_left", words);
        Assert.All(words.Except(["p_sat"]), word => Assert.NotEqual(word, spanish.Formula(word)));
    }

    [GeneratedRegex("(?<=\"[^\"]*)\\p{L}+_[a-z]{2,}", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex BelowInLiterals();
}
