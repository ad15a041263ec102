using Lapwise.Core.Answers;
using Lapwise.Core.Bases;
using Lapwise.Core.Explain;
using Lapwise.Shared;

namespace Lapwise.Documents.Tests;

/// <summary>Every number of a job has a basis, and the sheet says it.</summary>
public class BasesPartTests
{
    private static readonly Voice[] Voices = [new(Language.English, UnitSystem.Us), new(Language.Spanish, UnitSystem.Metric)];

    [Theory]
    [InlineData("l-kitchen")]
    [InlineData("vanity")]
    public void Every_phase_of_a_job_has_numbers_and_each_says_its_inputs_and_a_listed_source(string sample)
    {
        var whole = Samples.Whole(sample);
        var numbers = JobBases.Of(whole).ToList();
        foreach (var phase in new[] { Core.Phases.Measure, Core.Phases.Materials, Core.Phases.Conditions, Core.Phases.Work, Core.Phases.Supply, Core.Phases.Timeline })
            Assert.Contains(numbers, n => n.Phase == phase);
        Assert.All(numbers, n =>
        {
            Assert.Contains(n.Basis.Source, Sources.All);
            Assert.NotEmpty(n.Basis.Inputs);
            foreach (var voice in Voices)
            {
                Assert.False(string.IsNullOrWhiteSpace(n.Name(voice)) || string.IsNullOrWhiteSpace(n.Shown(voice)), n.Name(Voice.Default));
                Assert.All(n.Basis.Inputs, i => Assert.False(string.IsNullOrWhiteSpace(i.Name(voice)) || string.IsNullOrWhiteSpace(i.Value(voice)), $"{n.Name(voice)}: {i.Name(voice)}"));
            }
        });
    }

    [Fact]
    public void The_sheet_numbers_them_all_and_names_every_source()
    {
        var whole = Samples.Whole("l-kitchen");
        foreach (var voice in Voices)
        {
            var page = UnitGap.Plain(System.Net.WebUtility.HtmlDecode(JobSheet.Html(whole, voice)));
            Assert.All(JobBases.Of(whole), n => Assert.Contains(voice.Formula(n.Basis.Formula), page));
            Assert.All(JobBases.Of(whole).Select(n => n.Basis.Source).Distinct(), s => Assert.Contains(s.Title(voice), page));
        }
    }

    /// <summary>The parts of a basis come to the number: areas add up to what is coated, losses and net to the need, ages to the margin.</summary>
    [Fact]
    public void What_a_basis_adds_up_is_the_number_it_stands_for()
    {
        var whole = Samples.Whole("l-kitchen");
        var v = new Voice(Language.English, UnitSystem.Metric);
        foreach (var coat in whole.Materials.Coats)
            Assert.Equal(coat.NeedMl, coat.NetMl + coat.Losses.Sum(l => l.Ml), 1e-9 * coat.NeedMl);
        foreach (var work in whole.Work.Coats.Where(c => c.Laps.Count > 0))
        {
            var worst = work.Laps.Where(l => l.Kind != Core.Work.LapKind.Break).MaxBy(l => l.AgeMs)!;
            var (a, b) = (work.Sections.Single(s => s.Id == worst.A), work.Sections.Single(s => s.Id == worst.B));
            Assert.Equal(work.WorstLapAgeMs, Math.Max(a.EndMs, b.EndMs) - Math.Min(a.StartMs, b.StartMs));
            Assert.Equal([$"start {Voice.Clock(a.StartMs / 1000.0)}, end {Voice.Clock(a.EndMs / 1000.0)}", $"start {Voice.Clock(b.StartMs / 1000.0)}, end {Voice.Clock(b.EndMs / 1000.0)}"], WorkBases.WorstLap(work).Inputs.Select(i => i.Value(v)));
        }
    }

    /// <summary>Where each number that the answers carry is opened: by its member's name, the start of the name in the list of bases.</summary>
    private static readonly Dictionary<string, string> OpenedBy = new(StringComparer.Ordinal)
    {
        ["TakeOffRow.FlatM2"] = "flat", ["TakeOffRow.EdgeM2"] = "edges", ["TakeOffRow.SplashM2"] = "splashes", ["TakeOffRow.WaterfallM2"] = "waterfalls", ["TakeOffRow.RimM2"] = "cutout rims", ["TakeOffRow.CoatedM2"] = "to coat",
        ["TakeOffRow.MisclosureM"] = "left open by the tape",
        ["CoatMaterialsAnswer.NetMl"] = "net", ["CoatMaterialsAnswer.LossMl"] = "loss", ["CoatMaterialsAnswer.NeedMl"] = "need", ["CoatMaterialsAnswer.ThinnerMl"] = "thinner", ["CoatMaterialsAnswer.CostTotal"] = "cost",
        ["VocAnswer.ActualGPerL"] = "VOC as applied", ["VocAnswer.LessWaterGPerL"] = "VOC as applied", ["KitAnswer.SizeMl"] = "kits", ["KitAnswer.Count"] = "kits", ["KitAnswer.Price"] = "kits",
        ["CoatPlanAnswer.OpenTimeS"] = "open time", ["CoatPlanAnswer.PotLifeS"] = "pot life", ["CoatPlanAnswer.BatchAgeShare"] = "share of a batch's age", ["CoatPlanAnswer.WorstLapAgeS"] = "worst lap age",
        ["CoatPlanAnswer.WorstSectionAgeS"] = "worst section age", ["CoatPlanAnswer.LapMarginS"] = "lap margin", ["CoatPlanAnswer.TargetMarginS"] = "margin aimed at", ["ProofAnswer.BoundS"] = "least worst age", ["ProofAnswer.Ways"] = "least worst age",
        ["SectionAnswer.AreaM2"] = "flat", ["SectionAnswer.FilmM2"] = "to coat", ["SectionAnswer.EdgeM"] = "edges", ["SectionAnswer.StartS"] = "starts of the sections", ["SectionAnswer.WetEndS"] = "starts of the sections",
        ["SectionAnswer.EndS"] = "starts of the sections", ["SectionAnswer.UsedS"] = "share of a batch's age", ["LapAnswer.LengthM"] = "flat", ["LapAnswer.AgeS"] = "ages of the laps", ["LapAnswer.MarginS"] = "lap margin",
        ["BatchAnswer.MixStartS"] = "use batch", ["BatchAnswer.MixEndS"] = "use batch", ["BatchAnswer.UseByS"] = "use batch", ["BatchAnswer.NetMl"] = "ticket of batch", ["BatchAnswer.VolumeMl"] = "ticket of batch",
        ["BatchAnswer.AMl"] = "ticket of batch", ["BatchAnswer.BMl"] = "ticket of batch", ["BatchAnswer.ThinnerMl"] = "ticket of batch", ["BatchAnswer.AG"] = "ticket of batch", ["BatchAnswer.BG"] = "ticket of batch",
        ["BatchAnswer.ThinnerG"] = "ticket of batch", ["BatchAnswer.RatioError"] = "ticket of batch", ["BatchAnswer.RatioErrorByMass"] = "ticket of batch", ["BatchAnswer.CMl"] = "ticket of batch", ["BatchAnswer.CG"] = "ticket of batch",
        ["StepAnswer.StartS"] = "starts of the sections", ["StepAnswer.EndS"] = "starts of the sections", ["StepAnswer.FromS"] = "starts of the sections", ["StepAnswer.ToS"] = "starts of the sections",
        ["BaselineAnswer.WorstLapAgeS"] = "usual way",
        // Set by the finisher or the planner, not worked out.
        ["SectionAnswer.DryPassDeg"] = "",
    };

    /// <summary>A number that an answer carries and the list does not open fails here, and so does an entry that opens nothing.</summary>
    [Fact]
    public void Every_number_of_the_answers_of_a_job_opens_in_the_list()
    {
        Type[] shapes = [typeof(TakeOffRow), typeof(CoatMaterialsAnswer), typeof(VocAnswer), typeof(KitAnswer), typeof(CoatPlanAnswer), typeof(ProofAnswer), typeof(SectionAnswer), typeof(LapAnswer), typeof(BatchAnswer), typeof(StepAnswer), typeof(BaselineAnswer)];
        Type[] numeric = [typeof(double), typeof(int), typeof(decimal), typeof(long)];
        var carried = shapes.SelectMany(t => t.GetProperties().Where(m => numeric.Contains(Nullable.GetUnderlyingType(m.PropertyType) ?? m.PropertyType)).Select(m => $"{t.Name}.{m.Name}")).ToList();
        Assert.Equal(carried.Order(StringComparer.Ordinal), OpenedBy.Keys.Order(StringComparer.Ordinal));
        var opened = Samples.Names.SelectMany(s => JobBases.Of(Samples.Whole(s))).Select(n => n.Name(Voice.Default)).Append("left open by the tape").ToHashSet(StringComparer.Ordinal);
        Assert.All(OpenedBy.Where(o => o.Value.Length > 0), o => Assert.True(opened.Any(name => name.StartsWith(o.Value, StringComparison.Ordinal)), o.Key));
    }
}
