using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work;

/// <summary>Where batches change in a plan, and what is said of it.</summary>
public sealed class BatchChangeTests
{
    private static readonly Top Bench = CutTops.Top(new OutlineSpec.L(3, 0.55, 3, 0.55), "wwooow").Top;

    private static CoatWork Plan(double largestBatchMl, double openS, int people, params IReadOnlyList<Top> tops)
    {
        var job = Invented.Job with
        {
            Tools = Invented.Tools with { RollerChargeMl = 0, TrayResidueMl = 0, CupResidueMl = 0, LargestBatchMl = largestBatchMl },
            Crew = [.. Enumerable.Range(1, people).Select(i => Invented.Person with { Name = $"Person {i}" })],
            Tops = tops,
            System = [Invented.Coat with { TestBoard = new OpenTime(openS, Origin.TestBoard) }],
        };
        return Planning.Plan(job, Measuring.Measure(job), Judging.Judge(job)).Coats[0];
    }

    private static IEnumerable<Lap> OutOfTwo(CoatWork work)
    {
        var of = work.Sections.ToDictionary(s => s.Id, s => s.Batch, StringComparer.Ordinal);
        return work.Laps.Where(l => of[l.A] != of[l.B]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void On_two_arms_the_batch_changes_at_the_corner(int people)
    {
        var work = Plan(360, 1500, people, Bench);
        Assert.True(work.Holds, string.Join(" ", work.Reasons.Select(r => r.Text(Voice.Default))));
        Assert.Equal(2, work.Batches.Count);
        Assert.All(OutOfTwo(work), l => Assert.True(l.AtCorner));
        Assert.NotEmpty(OutOfTwo(work));
        var said = work.Reasons.Single(r => r.Code == "BatchesChange");
        Assert.Contains("where it is not seen", said.Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Laps_joined_out_of_two_batches_are_named_where_they_cannot_be_avoided()
    {
        var work = Plan(140, 1500, 1, Bench);
        var showing = OutOfTwo(work).Where(l => l.Kind is LapKind.Flat && !l.AtCorner).ToList();
        Assert.NotEmpty(showing);
        foreach (var voice in Invented.Voices)
        {
            var said = work.Reasons.Single(r => r.Code == "BatchesChange").Text(voice);
            Assert.All(showing, l => Assert.Contains($"{l.A}–{l.B}", said, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void One_batch_says_nothing_of_a_change() =>
        Assert.DoesNotContain(Plan(1400, 1500, 1, Bench).Reasons, r => r.Code == "BatchesChange");

    [Fact]
    public void A_change_never_costs_the_target_the_batches_or_the_pot_life() =>
        (from batch in Gen.Double[90, 500] from open in Gen.Int[400, 1800] from people in Gen.Int[1, 3] select (batch, open, people)).Sample(t =>
        {
            var work = Plan(t.batch, t.open, t.people, Bench);
            if (work.Reasons.Any(r => r.Code == "BatchOutlivesPot")) return;
            Assert.All(work.Batches, b => Assert.True(b.VolumeMl <= t.batch + 1e-6));
            Assert.All(work.Batches, b => Assert.All(work.Sections.Where(s => s.Batch == b.Id), s => Assert.True(s.EndMs <= b.UseByMs && s.StartMs >= b.ReadyMs)));
        }, iter: 40);
}
