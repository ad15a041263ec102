using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Timeline;

/// <summary>A job whose coats go on some of its tops: each phase counts the tops its coat goes on, and each coat follows the last on these.</summary>
public sealed class LayersTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Metric);

    private static TopDocument Top(string name) => Written.Island with { Name = name, Substrate = Substrate.Laminate };

    private static WholeJob Whole(params CoatDocument[] coats)
    {
        var (whole, faults) = WholeJob.From(Written.Job with
        {
            Tops = [Top("Run"), Top("Island")],
            System = coats,
            Products =
            [
                Written.Clear,
                Written.Clear with { Id = "slow", UsableFrom = new UsableFromDocument { LightUse = "96 h", FullUse = "14 d", FullCure = "30 d" } },
                Written.Clear with { Id = "sanded", Recoat = new RecoatDocument { Earliest = "4 h", Latest = "48 h", At = "73 °F", AlwaysSand = true } },
            ],
        }, []);
        Assert.Empty(faults);
        return whole!;
    }

    private static CoatDocument On(string? top, string product = "clear", string? color = null) => new() { Product = product, Color = color, OnTops = top is null ? null : [top] };

    private static PlannedStep Coated(JobTimeline t, int coat) => t.Steps.Single(s => s.Kind == SiteStep.Coat && s.Coat == coat);

    [Fact]
    public void A_coat_is_estimated_planned_and_supplied_for_its_own_tops()
    {
        var whole = Whole(On("Run", color: "chalk"), On("Island", color: "slate"), On(null));

        var tops = whole.Measured.Tops.ToDictionary(t => t.Top.Name, t => t.TakeOff.CoatedM2);
        Assert.Equal([tops["Run"], tops["Island"], tops["Run"] + tops["Island"]], whole.Materials.Coats.Select(c => c.AreaM2));
        Assert.Equal(["Run", "Island", "Run, Island"], whole.Work.Coats.Select(c => string.Join(", ", whole.Measured.Tops.Select(t => t.Top.Name).Where(t => c.Sections.Any(s => s.Face.Top == t)))));
        Assert.All(whole.Work.Coats.Zip(whole.Materials.Coats), c => Assert.Equal(c.Second.AreaM2, c.First.Sections.Sum(s => s.FilmM2), 1e-6));
        Assert.True(whole.Stands);
    }

    [Fact]
    public void The_coats_of_two_tops_do_not_wait_for_one_another_and_the_coat_over_both_waits_for_both()
    {
        var t = Whole(On("Run"), On("Island"), On(null)).Timeline;

        Assert.Equal(Coated(t, 0).Start.Date, Coated(t, 1).Start.Date);
        Assert.True(Coated(t, 1).Start - Coated(t, 0).End < TimeSpan.FromHours(1));
        Assert.Equal(["coat 1 to coat 3", "coat 2 to coat 3"], t.Waits.Where(w => w.Before == t.Steps.ToList().IndexOf(Coated(t, 2))).Select(w => w.Name(English)).Order());
    }

    [Fact]
    public void A_second_coat_on_one_top_follows_the_first_on_it()
    {
        var t = Whole(On(null), On("Island")).Timeline;

        Assert.Contains(t.Waits, w => w.Name(English) == "coat 1 to coat 2");
        Assert.Equal(["masking off Run", "masking off Island"], t.Steps.Where(s => s.Kind == SiteStep.Unmask).Select(s => s.Name(English)));
    }

    [Fact]
    public void Each_top_has_its_masking_off_while_its_own_last_coat_gives()
    {
        var t = Whole(On("Run"), On("Island")).Timeline;
        Assert.Equal(["masking off Run", "masking off Island"], t.Steps.Where(s => s.Kind == SiteStep.Unmask).Select(s => s.Name(English)));
    }

    [Fact]
    public void The_customer_waits_for_the_slowest_of_the_films()
    {
        var both = Whole(On("Run", "slow"), On("Island")).Timeline;
        var fast = Whole(On("Run"), On("Island")).Timeline;

        DateTime Light(JobTimeline t) => t.UseDates.Single(u => u.Use == UseOf.LightUse).From;
        Assert.True(Light(both) - Light(fast) > TimeSpan.FromHours(40));
        Assert.DoesNotContain(both.UseDates, u => u.Use == UseOf.FullCure); // the other sheet does not tell
    }

    [Fact]
    public void Sanding_between_coats_is_of_the_film_beneath_and_waits_while_another_is_fresh()
    {
        var t = Whole(On("Run", "sanded"), On("Island"), On("Run")).Timeline;

        var sanded = t.Steps.Single(s => s.Kind == SiteStep.SandBetween);
        Assert.Equal("sand coat 1", sanded.Name(English));
        Assert.True(sanded.Start - Coated(t, 1).End >= TimeSpan.FromHours(4));
    }

    [Fact]
    public void A_top_no_coat_goes_on_is_said()
    {
        var whole = Whole(On("Run"));
        Assert.Contains(whole.Timeline.Reasons, r => r.Code == "TopWithoutCoat" && r.Text(English).Contains("Island", StringComparison.Ordinal));
        Assert.Single(whole.Work.Coats);
    }

    /// <summary>One to four coats, each on any of the two tops or on both: top by top, in the room of the sheet, 4 to 24 h apart.</summary>
    [Fact]
    public void On_every_top_each_coat_comes_within_its_window_after_the_one_it_lies_on() =>
        Gen.Int[0, 2].Array[1, 4].Sample(
            chosen =>
            {
                string?[] tops = [.. chosen.Select(c => c switch { 0 => "Run", 1 => "Island", _ => null })];
                var t = Whole([.. tops.Select(top => On(top))]).Timeline;
                Assert.All(t.Steps.Zip(t.Steps.Skip(1)), p => Assert.True(p.First.End <= p.Second.Start));
                foreach (var top in new[] { "Run", "Island" })
                {
                    var on = Enumerable.Range(0, tops.Length).Where(c => tops[c] is null || tops[c] == top).ToList();
                    foreach (var (under, over) in on.Zip(on.Skip(1)))
                    {
                        var touched = t.Steps.First(s => s.Coat == over && s.Start >= Coated(t, under).End).Start;
                        Assert.True(touched - Coated(t, under).End >= TimeSpan.FromHours(4), $"{touched - Coated(t, under).End}");
                        Assert.True(Coated(t, over).Start - Coated(t, under).End <= TimeSpan.FromHours(27) || t.Steps.Any(s => s is { Kind: SiteStep.SandBetween, IsInserted: true } && s.Coat == over));
                    }

                    if (on.Count > 0) Assert.Contains(t.Steps, s => s.Kind == SiteStep.Unmask && s.Start >= Coated(t, on[^1]).End);
                }
            },
            iter: 25, print: chosen => string.Join(' ', chosen), threads: 1);
}
