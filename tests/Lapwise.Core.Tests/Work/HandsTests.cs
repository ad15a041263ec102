using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work;

/// <summary>Who rolls and who mixes, on an island of 16 ft × 44 in that can be walked all round.</summary>
public sealed class HandsTests
{
    private static readonly PersonDocument Slow = new() { Name = "Slow", Pace = new PaceDocument { WetOut = "4 ft²/min", DryPass = "8 ft²/min", Mix = "5 min" } };

    [Fact]
    public void Who_mixes_and_does_not_roll_charges_no_roller()
    {
        var two = Planned(8, "16 ft", Person("A"), Person("B"));
        var three = Planned(8, "16 ft", Person("A"), Person("B"), Person("C"));
        Assert.Equal(1, two.Rollers);
        Assert.Equal(1, three.Rollers);
        Assert.Equal(two.Batches.Select(b => b.VolumeMl), three.Batches.Select(b => b.VolumeMl));

        var (roller, tray, cup) = (Defaults.Tools.RollerCharge.Value, Defaults.Tools.TrayResidue.Value, Defaults.Tools.CupResidue.Value);
        var first = two.Batches[0];
        var edges = two.Sections.Where(s => s.Batch == first.Id).Sum(s => (s.FilmM2 - s.FaceM2) * (first.NetMl / two.Sections.Where(t => t.Batch == first.Id).Sum(t => t.FilmM2)) * Defaults.Tools.EdgeLoss.Value);
        Assert.Equal(first.NetMl + edges + cup + roller + tray, first.VolumeMl, 1e-6);
    }

    [Fact]
    public void Somebody_who_only_mixes_asks_for_no_second_batch()
    {
        var four = Planned(4, "8 ft", Person("A"), Person("B"), Person("C"), Person("D"));
        var five = Planned(4, "8 ft", Person("A"), Person("B"), Person("C"), Person("D"), Person("E"));
        Assert.Single(four.Batches);
        Assert.Single(five.Batches);
        Assert.Equal(four.Batches[0].VolumeMl, five.Batches[0].VolumeMl, 1e-9);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_quicker_rolls_alone_wherever_they_stand_in_the_crew_and_the_other_mixes_at_their_own_pace(bool slowFirst)
    {
        var coat = slowFirst ? Planned(11, "16 ft", Slow, Person("Quick")) : Planned(11, "16 ft", Person("Quick"), Slow);
        var quick = slowFirst ? 1 : 0;
        Assert.All(coat.Sections, s => Assert.Equal(quick, s.Person));
        Assert.All(coat.Batches, b => Assert.Equal((1 - quick, 300_000), (b.MixedBy, b.MixEndMs - b.MixStartMs)));
        Assert.Equal(10, coat.Sections.Count);
        Assert.Contains(coat.Reasons, r => r.Code == "OneRolls" && r.Text(Voice.Default).StartsWith("Quick rolls alone", StringComparison.Ordinal));
    }

    [Fact]
    public void A_helper_who_mixes_slowly_is_not_charged_to_one_who_mixes_quickly()
    {
        var mixesSlowly = new PersonDocument { Name = "Slow cup", Pace = new PaceDocument { Mix = "5 min" } };
        var coat = Planned(11, "16 ft", mixesSlowly, Person("Quick cup"));
        Assert.All(coat.Sections, s => Assert.Equal(0, s.Person));
        Assert.All(coat.Batches, b => Assert.Equal((1, 150_000), (b.MixedBy, b.MixEndMs - b.MixStartMs)));
    }

    [Fact]
    public void Of_people_alike_the_first_rolls_and_of_the_others_the_quickest_mixes()
    {
        var quickCup = new PersonDocument { Name = "Quick cup", Pace = new PaceDocument { Mix = "1 min" } };
        var coat = Planned(11, "16 ft", Slow, Person("A"), Person("B"), quickCup);
        Assert.All(coat.Sections, s => Assert.Equal(1, s.Person));
        Assert.All(coat.Batches, b => Assert.Equal((3, 60_000), (b.MixedBy, b.MixEndMs - b.MixStartMs)));
    }

    [Fact]
    public void Where_one_is_too_slow_alone_two_roll_and_the_others_mix()
    {
        var coat = Planned(5, "8 ft", Slow, Person("A"), Person("B"), Person("C"));
        Assert.Equal([1, 2], coat.Sections.Select(s => s.Person).Distinct().Order());
        Assert.All(coat.Batches, b => Assert.Equal(3, b.MixedBy));
    }

    [Fact]
    public void Two_each_mix_a_batch_first_where_mixing_on_the_way_would_age_a_lap()
    {
        var coat = Planned(5, "16 ft", Person("A"), Person("B"));
        Assert.True(coat.LapMarginMs >= coat.TargetMarginMs, $"{coat.LapMarginMs}");
        Assert.Equal([(0, 0L), (1, 0L)], coat.Batches.Select(b => (b.MixedBy, b.MixStartMs)).Order());
        Assert.Equal(2, coat.Laps.Count(l => coat.Sections.First(s => s.Id == l.A).Batch != coat.Sections.First(s => s.Id == l.B).Batch));
    }

    [Fact]
    public void The_estimate_charges_those_who_roll()
    {
        var job = Invented.Job with { Crew = [Invented.Person, Invented.Person, Invented.Person] };
        var measured = Invented.Measured(4);
        double Charge(params IReadOnlyList<int> rollers) => Estimating.Estimate(job, measured, rollers).Coats[0].Losses.Where(l => l.Kind is LossKind.RollerCharge or LossKind.TrayResidue).Sum(l => l.Ml);
        Assert.Equal(Charge(1) * 3, Charge(3), 1e-9);
        Assert.Equal(Charge(3), Charge(), 1e-9);
    }

    private static PersonDocument Person(string name) => new() { Name = name };

    private static CoatWork Planned(int openMin, string length, params IReadOnlyList<PersonDocument> crew)
    {
        var read = JobReading.Read(
            new JobDocument
            {
                Name = "Island",
                Room = new RoomDocument { Air = "73 °F", Humidity = "45 %", Surface = "73 °F", Material = "73 °F" },
                Crew = [.. crew],
                Tops = [new TopDocument
                {
                    Name = "Island",
                    Thickness = "1 1/2 in",
                    Outline = new OutlineDocument { Length = length, Depth = length == "8 ft" ? "42 in" : "44 in" },
                    Edges = "ABCD".ToDictionary(c => $"{c}", _ => new EdgeDocument { Kind = EdgeKind.Open }, StringComparer.Ordinal),
                }],
                System = [new CoatDocument { Product = "clear", WetFilm = "6.5 mil" }],
            },
            [PlanningTests.Clear]);
        Assert.Empty(read.Faults.Select(f => f.Say(Voice.Default)));
        var job = read.Job! with { System = [read.Job.System[0] with { TestBoard = new OpenTime(openMin * 60, Origin.TestBoard) }] };
        return Planning.Plan(job, Measuring.Measure(job), Judging.Judge(job)).Coats[0];
    }
}
