using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class EquivalentAgeTests
{
    private static readonly TemperatureLaw Law = new TemperatureLaw.HalvingEachTenDegrees(new TimeAt(4 * 3600, 23));

    private static readonly Gen<TemperatureAt[]> AnyCourse = Gen.Select(Gen.Double[600, 7200], Gen.Double[5, 38]).Array[2, 12].Select(steps =>
    {
        var at = 0.0;
        return steps.Select(s => new TemperatureAt(at += s.Item1, s.Item2)).ToArray();
    });

    [Theory]
    [InlineData(23, 4)]
    [InlineData(33, 2)]
    [InlineData(13, 8)]
    public void A_steady_temperature_is_the_law_itself(double celsius, double hours) =>
        Assert.Equal(hours * 3600, EquivalentAge.Until(Law, [new TemperatureAt(0, celsius)], holdsLast: true)!.Value, 1e-6);

    /// <summary>Progress over a straight rise from T₁ to T₂ in time s, by the rule of ten: s (2^b − 2^a) / (t₁ (b − a) ln 2), a and b in tens of degrees.</summary>
    [Fact]
    public void A_straight_rise_is_the_closed_form() => Gen.Select(Gen.Double[5, 20], Gen.Double[21, 40], Gen.Double[600, 20_000]).Sample((from, to, seconds) =>
    {
        var (a, b) = ((from - 23) / 10, (to - 23) / 10);
        var exact = seconds * (Math.Pow(2, b) - Math.Pow(2, a)) / (4 * 3600 * (b - a) * Math.Log(2));
        Assert.Equal(1, EquivalentAge.Progress(Law, [new TemperatureAt(0, from), new TemperatureAt(seconds, to)]) / exact, 1e-8);
    });

    [Fact]
    public void The_moment_found_has_a_progress_of_one() => AnyCourse.Sample(course =>
    {
        if (EquivalentAge.Until(Law, course) is not { } seconds) return;
        var moment = course[0].Seconds + seconds;
        var last = Array.FindIndex(course, c => c.Seconds >= moment);
        var share = (moment - course[last - 1].Seconds) / (course[last].Seconds - course[last - 1].Seconds);
        TemperatureAt[] until = [.. course.Take(last), new TemperatureAt(moment, course[last - 1].Celsius + (share * (course[last].Celsius - course[last - 1].Celsius)))];
        Assert.Equal(1, EquivalentAge.Progress(Law, until), 1e-7);
    });

    [Fact]
    public void Hotter_is_never_later() => Gen.Select(AnyCourse, Gen.Double[0.1, 8]).Sample((course, hotter) =>
        EquivalentAge.Until(Law, [.. course.Select(c => c with { Celsius = c.Celsius + hotter })], holdsLast: true) <= EquivalentAge.Until(Law, course, holdsLast: true));

    [Fact]
    public void Where_the_temperatures_end_no_time_is_invented() =>
        Assert.Null(EquivalentAge.Until(Law, [new TemperatureAt(0, 20), new TemperatureAt(3600, 20)]));

    [Fact]
    public void Waits_come_in_the_order_of_the_sheet_and_follow_the_room()
    {
        var product = Invented.Clear with { DryToTouch = new TimeAt(3600, 23), Recoat = new Recoat(4 * 3600, 24 * 3600, 23), UsableFrom = new UsableFrom(48 * 3600, 72 * 3600, 168 * 3600) };
        var cool = Waits.Of(product, [new TemperatureAt(0, 15)], holdsLast: true);
        Assert.Equal([WaitFor.DryToTouch, WaitFor.EarliestRecoat, WaitFor.LatestRecoat, WaitFor.LightUse, WaitFor.Water, WaitFor.FullUse], cool.Select(w => w.For));
        Assert.All(cool, w => Assert.True(w.Seconds > w.SheetS));
        Said.InEveryVoice([.. cool.Select(w => (Core.Explain.Phrase)(v => Waits.Say(w.For, v))), .. cool.SelectMany(w => w.Basis.Inputs).Select(i => i.Name)]);
    }

    /// <summary>ASTM D1640: a film passes the stages in this order.</summary>
    [Fact]
    public void Stages_are_named_in_both_languages_once_each()
    {
        Said.InEveryVoice([.. DryStages.All.SelectMany(s => new[] { s.Name, s.Test })]);
        Assert.Equal(DryStages.All.Count, DryStages.All.Select(s => s.Id).Distinct().Count());
    }
}
