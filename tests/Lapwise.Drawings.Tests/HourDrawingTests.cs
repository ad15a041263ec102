using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;
using Lapwise.Core.Quick;

namespace Lapwise.Drawings.Tests;

public class HourDrawingTests
{
    private static readonly Voice[] Voices = [new(Language.English, UnitSystem.Us), new(Language.Spanish, UnitSystem.Metric)];

    private static RoomDay Day(params (string Name, string Value)[] written) =>
        QuickSum.All.Single(s => s.Name == "day").Answer(written.ToDictionary(w => w.Name, w => w.Value), UnitSystem.Metric).Result!.Day!;

    private static RoomDay Swinging(string swing) => Day(("mean", "20 °C"), ("humidity", "70 %"), ("swing", swing));

    /// <summary>A day with every verdict and two hours without a reading.</summary>
    private static readonly RoomDay WithGap = Day(("readings", string.Join('\n', Enumerable.Range(0, 24).Where(h => h is not (12 or 13)).SelectMany(h => new[] { 0, 30 }.Select(m => $"{h:00}:{m:00} {12 + (h / 2)} °C {(h < 4 ? 97 : h < 7 ? 88 : 60)} %")))));

    public static TheoryData<string, RoomDay> Days() => new() { { "swinging", Swinging("14 °C") }, { "steady", Swinging("0 °C") }, { "with a gap", WithGap } };

    [Theory]
    [MemberData(nameof(Days))]
    public void Draw_texts_never_overlap_and_stay_on_the_sheet(string name, RoomDay day)
    {
        Assert.NotEmpty(name);
        foreach (var voice in Voices)
            foreach (var sheet in new[] { Sheet.Phone, Sheet.Wide })
                Overlaps.None(HourDrawing.Draw(day, voice, sheet));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Draw_every_hour_carries_the_sign_of_its_verdict(string name, RoomDay day)
    {
        Assert.NotEmpty(name);
        var words = new Read(HourDrawing.Draw(day, Voices[0], Sheet.Phone).Svg()).Words;
        // One more of each stands in the legend.
        foreach (var verdict in day.Strip.Hours.GroupBy(h => h.Verdict)) Assert.Equal(verdict.Count() + 1, words.Count(w => w == HourDrawing.Sign(verdict.Key)));
        Assert.Contains(words, w => w == "best " + day.Strip.Best!.Hours(Voices[0]));
    }

    [Theory]
    [MemberData(nameof(Days))]
    public void Draw_no_curve_runs_through_a_temperature(string name, RoomDay day)
    {
        Assert.NotEmpty(name);
        var marks = HourDrawing.Draw(day, Voices[1], Sheet.Wide).Marks;
        var curve = marks.Select((m, i) => (m, i)).First(p => p.m is Mark.Line { Ink: Ink.Curve }).i;
        Assert.All(marks.Select((m, i) => (m, i)).Where(p => p.m is Mark.Text { Words: var words } && words.EndsWith("°C", StringComparison.Ordinal)), p => Assert.True(p.i > curve));
    }

    [Fact]
    public void Draw_breaks_its_lines_where_readings_are_missing()
    {
        // Top and dew point, each with its sample in the legend; twice as many parts where the day is broken once.
        Assert.Equal(1 + 1, new Read(HourDrawing.Draw(Swinging("14 °C"), Voices[0], Sheet.Wide).Svg()).OfClass("lw-curve").Count());
        Assert.Equal(2 + 1, new Read(HourDrawing.Draw(WithGap, Voices[0], Sheet.Wide).Svg()).OfClass("lw-curve").Count());
        Assert.Contains(WithGap.Strip.Hours, h => h.Verdict is Verdict.Unknown);
    }

    [Fact]
    public void Draw_says_every_hour_to_those_who_listen() =>
        Assert.All(WithGap.Strip.Hours, h => Assert.Contains($"{Voices[1].BareHour(h.From)}: {HourStrip.Say(h.Verdict, Voices[1])}.", HourDrawing.Draw(WithGap, Voices[1], Sheet.Phone).Description));
}
