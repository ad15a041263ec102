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
            var page = System.Net.WebUtility.HtmlDecode(JobSheet.Html(whole, voice));
            Assert.All(JobBases.Of(whole), n => Assert.Contains(n.Basis.Formula, page));
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
}
