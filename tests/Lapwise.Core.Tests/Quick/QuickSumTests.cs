using Lapwise.Core.Explain;
using Lapwise.Core.Quick;

namespace Lapwise.Core.Tests.Quick;

public sealed class QuickSumTests
{
    private static readonly Dictionary<string, Dictionary<string, string>> Written = new(StringComparer.Ordinal)
    {
        ["width"] = new() { ["shape"] = "ogee", ["thickness"] = "38 mm", ["radius"] = "6 mm", ["run"] = "3 m" },
        ["film"] = new() { ["dry"] = "90 um", ["solids"] = "62 %", ["thinner"] = "2 %", ["coats"] = "2" },
        ["spread"] = new() { ["area"] = "4 m2", ["wet"] = "160 um", ["solids"] = "62 %", ["loss"] = "10 %", ["rough"] = "30 um", ["used"] = "800 mL" },
        ["mix"] = new() { ["a"] = "4", ["b"] = "1", ["c"] = "0.5", ["leftA"] = "1000 mL", ["leftB"] = "200 mL", ["leftC"] = "150 mL", ["thinner"] = "2 %" },
        ["voc"] = new() { ["vocA"] = "80 g/L", ["b"] = "0.5", ["thinner"] = "5 %", ["thinnerIs"] = "solvent", ["limit"] = "90 g/L" },
        ["dew-point"] = new() { ["air"] = "20 °C", ["humidity"] = "80 %", ["surface"] = "18 °C" },
        ["open-time"] = new() { ["time"] = "11 min", ["at"] = "23 °C", ["surface"] = "30 °C", ["evaporation"] = "60 %", ["movement"] = "moving" },
        ["pot-life"] = new() { ["time"] = "40 min", ["at"] = "25 °C", ["of"] = "100 g", ["mass"] = "2 kg", ["material"] = "28 °C", ["ends"] = "overheats" },
        ["day"] = new() { ["readings"] = "06:00 9 °C 90 %\n07:00 12 °C 70 %\n08:00 18 °C 55 %\n09:00 20 °C 50 %" },
        ["cure"] = new() { ["time"] = "4 h", ["at"] = "23 °C", ["room"] = "17 °C", ["swing"] = "8 °C" },
        ["vapour"] = new() { ["of"] = "xylene", ["amount"] = "500 mL", ["over"] = "30 min", ["length"] = "4 m", ["width"] = "4 m", ["height"] = "2.5 m", ["changes"] = "1" },
    };

    public static TheoryData<string> Names => new(QuickSum.All.Select(s => s.Name));

    private static QuickResult Answer(string name, IReadOnlyDictionary<string, string>? written = null)
    {
        var (result, faults) = QuickSum.All.Single(s => s.Name == name).Answer(written ?? Written[name], UnitSystem.Metric);
        Assert.Empty(faults.Select(f => f.Say(Voice.Default)));
        return result!;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_sum_is_said_in_both_languages_down_to_its_inputs(string name)
    {
        var sum = QuickSum.All.Single(s => s.Name == name);
        Said.InEveryVoice([sum.Title, sum.Question, .. sum.Fields.SelectMany(f => f.Words).Select(w => w.Say), .. sum.Fields.Select(f => f.Label)]);
        var result = Answer(name);
        Assert.All(result.Rows, row => Assert.All(Invented.Voices, voice => Assert.False(string.IsNullOrWhiteSpace(row.Label(voice) + row.Shown(voice)))));
        Assert.All(result.Rows, row => Assert.NotEmpty(row.Basis.Inputs));
        if (result.Reasons.Count > 0) Said.InEveryVoice([.. result.Reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
        if (result.Steps.Count > 0) Said.InEveryVoice(result.Steps);
    }

    /// <summary>What is shown changes with the voice; the numbers never do.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Written_in_the_other_units_the_numbers_are_the_same(string name)
    {
        var sum = QuickSum.All.Single(s => s.Name == name);
        var us = sum.Answer(Written[name], UnitSystem.Us).Result!;
        Assert.Equal(Answer(name).Rows.Select(r => (r.Name, r.Value)), us.Rows.Select(r => (r.Name, r.Value)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void With_nothing_written_every_field_that_is_needed_is_asked_for(string name)
    {
        var sum = QuickSum.All.Single(s => s.Name == name);
        var faults = sum.Answer(new Dictionary<string, string>(StringComparer.Ordinal), UnitSystem.Us).Faults;
        Assert.All(sum.Fields.Where(f => f.Needed), f => Assert.Contains(faults, x => x.Path == f.Name));
    }

    [Fact]
    public void Names_are_given_once() => Assert.All(QuickSum.All, sum => Assert.Equal(sum.Fields.Count, sum.Fields.Select(f => f.Name).Distinct().Count()));

    [Fact]
    public void A_hidden_end_keeps_the_sheets_clock_whatever_the_mass()
    {
        var gels = Answer("pot-life", new Dictionary<string, string>(Written["pot-life"]) { ["ends"] = "gels" });
        var hidden = Answer("pot-life", new Dictionary<string, string>(Written["pot-life"]) { ["ends"] = "hidden" });
        Assert.True(gels.Rows[0].Value < hidden.Rows[0].Value);
        Assert.Single(hidden.Rows);
        Assert.Equal("OnlyTheClockTells", Assert.Single(hidden.Reasons).Code);
    }

    [Fact]
    public void What_can_hurt_carries_its_cautions_and_the_deferral_last()
    {
        foreach (var name in new[] { "pot-life", "vapour" })
            Assert.Same(Cautions.Deferral, QuickAnswer.CautionsOf(Answer(name))[^1]);
        Assert.Empty(QuickAnswer.CautionsOf(Answer("film")));
    }

    [Fact]
    public void A_test_board_takes_the_place_of_the_data_sheet_and_keeps_both_ends()
    {
        var seen = Answer("open-time", new Dictionary<string, string>(Written["open-time"]) { ["lastGood"] = "9 min", ["firstBad"] = "10 min 30 s" }).Rows.ToDictionary(r => r.Name);
        Assert.Equal((540, 630), (seen["openTimeS"].Value, seen["firstBadS"].Value));
        Assert.Equal(Answer("open-time").Rows.Single(r => r.Name == "openTimeS").Value, seen["sheetS"].Value);
        Assert.Contains("test board", seen["openTimeS"].Shown(Voice.Default), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("9 min", "8 min", "BoardOutOfOrder")]
    [InlineData(null, "8 min", "NoGoodLap")]
    public void A_board_that_tells_nothing_is_refused_beside_its_field(string? good, string bad, string code)
    {
        var written = new Dictionary<string, string>(Written["open-time"]) { ["firstBad"] = bad };
        if (good is not null) written["lastGood"] = good;
        var fault = Assert.Single(QuickSum.All.Single(s => s.Name == "open-time").Answer(written, UnitSystem.Metric).Faults);
        Assert.Equal(("lastGood", code), (fault.Path, fault.Code));
    }
}
