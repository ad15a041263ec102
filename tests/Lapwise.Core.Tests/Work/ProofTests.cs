using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Order;
using Lapwise.Core.Work.Sections;

namespace Lapwise.Core.Tests.Work;

/// <summary>What is proven of a plan is said for what it is: the order of these sections, or of every way of cutting that was tried.</summary>
public sealed class ProofTests
{
    private static readonly Pace Pace = Invented.Person.Pace;

    /// <summary>All of the open time is evaporation, so the age of a batch takes nothing off it and laps alone set the worst age.</summary>
    private static (CoatWork Work, MeasuredTop Top, Aims Aims) Plan(Top top, double openS)
    {
        var job = Invented.Job with
        {
            Tops = [top],
            System = [Invented.Coat with { Product = Invented.Clear with { Drying = new Drying(Carrier.Water, 1, 0.5) }, TestBoard = new OpenTime(openS, Origin.TestBoard) }],
        };
        var measured = Measuring.Measure(job);
        return (Planning.Plan(job, measured, Judging.Judge(job)).Coats[0], measured.Tops[0], job.Aims);
    }

    /// <summary>The order of a cut for one person, its times taken anew from the pace.</summary>
    private static FoundOrder Exactly(CutTop cut)
    {
        long Ms(double seconds) => (long)Math.Ceiling(seconds - 1e-9) * 1000;
        var found = OrderSearch.Solve(new OrderProblem(
            [.. cut.Sections.Select(s => new OrderSection($"{s.Index}", [Ms(Pace.WalkS + Pace.ReloadS + (s.FaceM2 / Pace.WetOutM2PerS) + (s.StripLengthM / Pace.EdgeMPerS)) + Ms(s.FaceM2 / Pace.DryPassM2PerS)]))],
            [.. cut.Seams.Where(s => s.Kind != LapKind.Break).Select(s => new OrderLap(s.A, s.B))],
            [.. cut.Sections.SelectMany(s => s.LeansOver.Select(over => (s.Index, over)))]));
        Assert.True(found.Proven);
        return found;
    }

    [Theory]
    [InlineData(1.1, 0.5)]
    [InlineData(2.4, 0.6)]
    [InlineData(2.4, 1.2)]
    public void Where_no_way_keeps_the_target_the_best_of_all_is_proven_of_all(double lengthM, double depthM)
    {
        var (work, top, aims) = Plan(CutTops.Top(new OutlineSpec.Rectangle(lengthM, depthM), "oooo").Top, openS: 40);
        var ways = Sectioning.Ways(top, aims).Where(w => w.Reasons.All(r => r.Limit is Limit.Note)).ToList();
        var best = ways.Min(w => Exactly(w) is var order ? Math.Max(order.WorstLapAgeMs, order.Sections.Max(p => p.EndMs - p.StartMs)) : 0);
        Assert.Equal(best, work.WorstCountedMs);
        Assert.Equal(Proof.OrderAndSections, work.Proof.Of);
        Assert.Equal(ProofState.Proven, work.Proof.State);
        Assert.Equal(ways.Count, work.Proof.Ways);
        Assert.All(Invented.Voices, v => Assert.Contains($" {ways.Count} ", ProofWords.Of(work, v), StringComparison.Ordinal));
    }

    [Fact]
    public void Where_finer_sections_would_be_younger_nothing_is_said_of_the_sections()
    {
        var (work, top, aims) = Plan(CutTops.Top(new OutlineSpec.Rectangle(2.4, 0.6), "oooo").Top, openS: 1500);
        Assert.Contains(Sectioning.Ways(top, aims), w => Exactly(w).WorstLapAgeMs < work.WorstCountedMs);
        Assert.Equal(Proof.Order, work.Proof.Of);
        Assert.Null(work.Proof.Ways);
        Assert.DoesNotContain("sections, of the", ProofWords.Of(work, Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_the_finishers_own_lines_only_the_order_is_proven()
    {
        var own = CutTops.Top(new OutlineSpec.Rectangle(1.1, 0.5), "oooo").Top with { SectionLines = [new SectionLine('A', 0.5, 0, null, SectionLineOn.Flat)] };
        var (work, _, _) = Plan(own, openS: 40);
        Assert.Equal(Proof.Order, work.Proof.Of);
    }
}
