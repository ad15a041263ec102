using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Quick;

namespace Lapwise.Core.Tests.Quick;

/// <summary>A sum filled from a job gives the job's own number: what is written loses nothing.</summary>
public sealed class QuickFillingTests
{
    private static readonly Product Product = Invented.Clear with
    {
        Voc = [new PartVoc(30, 0.45, 0), new PartVoc(110, 0, 0)],
        Solvent = SolventName.ButylAcetate,
        Recoat = new Recoat(4 * 3600, 24 * 3600, 23),
        Drying = new Lapwise.Core.Jobs.Drying(Carrier.Water, 0.6, 0.45),
        MassLives = [new MassLife(100, 45 * 60, 25)],
    };

    private static readonly Coat Coat = Invented.Coat with { Product = Product, ThinnerFraction = 0.015, RoughnessUm = 40, Path = "system[0]" };

    private static readonly Job Job = Invented.Job with
    {
        System = [Coat],
        Room = Invented.Room with { VolumeM3 = 53.8, AirChangesPerHour = 5 },
        Timeline = TimelineAsks.Usual with { DaySwingK = 6 },
        Tops = [new Top("Run", 0.038, new OutlineSpec.Rectangle(2, 0.6), new Dictionary<char, Edge> { ['A'] = new Edge.Open(new Profile(ProfileShape.Eased, 0.003, 0.02, 0, 0)) }, [], [], null)],
    };

    private static readonly JobMaterials Materials = Estimating.Estimate(Job, Invented.Measured(3.1, 4));
    private static readonly JobConditions Conditions = Judging.Judge(Job, Materials);

    public static TheoryData<string, UnitSystem> Sums => [.. QuickSum.All.SelectMany(s => new[] { (s.Name, UnitSystem.Us), (s.Name, UnitSystem.Metric) })];

    private static QuickResult Filled(string sum, UnitSystem units)
    {
        var asked = QuickSum.All.Single(s => s.Name == sum);
        var written = new QuickFilling(Job, Materials, Conditions, units).Of(asked, 0);
        Assert.NotEmpty(written);
        var (result, faults) = asked.Answer(written, units);
        Assert.Empty(faults.Select(f => f.Say(Voice.Default)));
        return result!;
    }

    private static double Number(string sum, UnitSystem units, string name) => Filled(sum, units).Rows.Single(r => r.Name == name).Value;

    [Theory]
    [MemberData(nameof(Sums))]
    public void Every_sum_of_a_full_job_opens_with_an_answer(string sum, UnitSystem units) => Assert.NotEmpty(Filled(sum, units).Rows);

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void The_answer_is_the_jobs_own_number(UnitSystem units)
    {
        var (material, conditions) = (Materials.Coats[0], Conditions.Coats[0]);
        Same(material.DryFilm.Micrometres, Number("film", units, "dryFilmUm"));
        Same(material.NeedMl, Number("spread", units, "needMl"));
        Same(material.NeedMl, Number("mix", units, "mixMl"));
        Same(material.Voc!.ActualGPerL, Number("voc", units, "actualGPerL"));
        Same(material.Voc.LessWaterGPerL, Number("voc", units, "lessWaterGPerL"));
        Same(Conditions.DewPointC, Number("dew-point", units, "dewPointC"));
        Same(conditions.DewMarginC, Number("dew-point", units, "marginK"));
        Same(conditions.OpenTime.Seconds, Number("open-time", units, "openTimeS"));
        Same(conditions.LargestBatch!.PourOutByS, Number("pot-life", units, "pourOutByS"));
        Same(conditions.Vapours[0].PeakPpm, Number("vapour", units, "peakPpm"));
        Same(EdgeProfiles.DevelopedWidthM(((Edge.Open)Job.Tops[0].Edges['A']).Profile, 0.038)!.Value, Number("width", units, "widthM"));
    }

    [Theory]
    [InlineData(UnitSystem.Us)]
    [InlineData(UnitSystem.Metric)]
    public void A_steady_room_gives_the_jobs_own_wait(UnitSystem units)
    {
        var steady = Job with { Timeline = TimelineAsks.Usual };
        var asked = QuickSum.All.Single(s => s.Name == "cure");
        var result = asked.Answer(new QuickFilling(steady, Materials, Conditions, units).Of(asked, 0), units).Result!;
        var wait = Waits.Of(Product, [new TemperatureAt(0, 23)], holdsLast: true).Single(w => w.For is WaitFor.EarliestRecoat);
        Same(wait.Seconds!.Value, result.Rows.Single(r => r.Name == "waitS").Value);
    }

    [Fact]
    public void A_job_without_coats_fills_only_what_it_knows()
    {
        var bare = new QuickFilling(Job with { System = [] }, null, null, UnitSystem.Metric);
        Assert.All(QuickSum.All.Where(s => s.Name is not ("width" or "dew-point")), s => Assert.Empty(bare.Of(s, 0)));
        Assert.NotEmpty(bare.Of(QuickSum.All.Single(s => s.Name == "dew-point"), 0));
    }

    private static void Same(double expected, double actual) => Assert.True(Math.Abs(expected - actual) <= 1e-6 * Math.Abs(expected), $"{expected:R} in the job, {actual:R} in the sum");
}
