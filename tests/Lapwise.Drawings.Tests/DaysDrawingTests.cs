using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

/// <summary>The days of one job with its temperature beneath, and the days of many jobs by crew.</summary>
public class DaysDrawingTests
{
    private static readonly Voice[] Voices = [new(Language.English, UnitSystem.Us), new(Language.Spanish, UnitSystem.Metric)];
    private static readonly Sheet[] Sheets = [Sheet.Phone, Sheet.Wide];

    public static TheoryData<string> EverySample() => [.. Samples.Names];

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Texts_never_overlap_and_stay_on_the_sheet(string sample)
    {
        foreach (var voice in Voices) foreach (var sheet in Sheets) Overlaps.None(TimelineDrawing.Draw(Samples.Whole(sample).Timeline, voice, sheet));
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void Every_part_of_a_step_is_a_bar_and_the_temperature_runs_beneath_them_all(string sample)
    {
        var timeline = Samples.Whole(sample).Timeline;
        var drawing = TimelineDrawing.Draw(timeline, Voices[0], Sheet.Wide);
        var bars = drawing.Marks.OfType<Mark.Line>().Where(l => l is { Ink: Ink.Cutout, Closed: true }).ToList();
        // One more for each of those who work stands in the legend.
        Assert.Equal(timeline.Steps.Sum(s => s.Parts.Count) + timeline.Steps.Select(s => s.By).Distinct().Count(), bars.Count);
        var curve = drawing.Marks.OfType<Mark.Line>().Where(l => l.Ink == Ink.LapNarrow).MaxBy(l => l.Points.Count)!;
        Assert.True(curve.Points.Count > 24);
        var lowestBar = bars.Take(timeline.Steps.Sum(s => s.Parts.Count)).Max(b => b.Points.Max(p => p.Y));
        Assert.All(curve.Points, p => Assert.True(p.Y > lowestBar));
        Assert.All(timeline.Steps, s => Assert.Contains(s.Name(Voices[0]), drawing.Description, StringComparison.Ordinal));
    }

    [Fact]
    public void Many_jobs_by_crew_keep_their_words_apart_and_say_what_stays_and_what_moved()
    {
        var visits = Enumerable.Range(0, 12).Select(i => new VisitDocument
        {
            Job = $"job{i / 3}", Name = $"Kitchen with a name that is far too long for its row, number {i / 3}", Number = (i % 3) + 1, From = $"2026-12-{7 + i:00}T08:00", LengthMin = 240, By = Doer.Crew,
            Crew = i < 6 ? "Wren" : "Alder", IsCoat = i % 3 == 1, Zone = "Europe/Madrid", En = "coat", Es = "capa",
        }).ToList();
        var marks = new CrewDaysMarks(new HashSet<DateOnly> { new(2026, 12, 9) }, new HashSet<string> { visits[0].Id }, new HashSet<string> { visits[1].Id });
        foreach (var voice in Voices)
            foreach (var sheet in Sheets)
            {
                var drawing = CrewDaysDrawing.Draw(visits, new DateOnly(2026, 12, 7), 14, marks, voice, sheet);
                Overlaps.None(drawing);
                var words = string.Join(' ', drawing.Marks.OfType<Mark.Text>().Select(t => t.Words));
                foreach (var said in new[] { "Wren", "Alder", voice.Say("stays", "se queda"), voice.Say("moved", "se movió"), voice.Say("no coat: day lost", "sin capas: día perdido") }) Assert.Contains(said, words, StringComparison.Ordinal);
            }
    }
}
