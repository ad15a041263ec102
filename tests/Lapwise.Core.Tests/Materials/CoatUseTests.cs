using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Tests.Materials;

/// <summary>Roughness, measured use and VOC in a job's own estimate.</summary>
public sealed class CoatUseTests
{
    private static CoatMaterial Estimate(Coat coat, Aims? aims = null, double flatM2 = 4)
    {
        var job = Invented.Job with { System = [coat], Aims = aims ?? Invented.Job.Aims };
        return Estimating.Estimate(job, Invented.Measured(flatM2)).Coats[0];
    }

    private static Coat With(Func<Product, Product> change) => Invented.Coat with { Product = change(Invented.Clear) };

    /// <summary>By hand: a profile of triangles 50 µm high holds 25 mL on each square metre; 4 m² take 100 mL more.</summary>
    [Fact]
    public void Rough_ground_takes_half_its_height_more()
    {
        var (smooth, rough) = (Estimate(Invented.Coat), Estimate(Invented.Coat with { RoughnessUm = 50 }));
        Assert.Equal(100, rough.Losses.Single(l => l.Kind is LossKind.Roughness).Ml, 1e-9);
        Assert.Equal(smooth.NeedMl + 100, rough.NeedMl, 1e-9);
        Assert.Contains(rough.Basis.Inputs, i => i.Name(Voice.Default).Contains("roughness", StringComparison.Ordinal));
    }

    /// <summary>By hand: 5 m² at 165 µm hold 825 mL and took 1237.5, half more; 4 m² then want 990 mL where 780 are counted.</summary>
    [Fact]
    public void Where_earlier_jobs_took_more_the_difference_is_kept_in_reserve()
    {
        var more = Estimate(With(p => p with { MeasuredUse = [new(5, 165, 1237.5)] }));
        Assert.Equal(990, more.NeedMl, 1e-9);
        Assert.Equal(210, more.Losses.Single(l => l.Kind is LossKind.MeasuredUse).Ml, 1e-9);
        Assert.Contains("150 %", more.Reasons.Single(r => r.Code == "MeasuredUse").Text(Voice.Default), StringComparison.Ordinal);
        Assert.Equal(780, Estimate(With(p => p with { MeasuredUse = [new(5, 165, 900)] })).NeedMl, 1e-9);
    }

    /// <summary>The worked example of a published finishing guidebook (Metal Finishing 2013, appendix B, p. 826): 1 gal of 2.5 lb/gal and a quarter of 6.8 lb/gal are 3.36 lb/gal.</summary>
    [Fact]
    public void Voc_as_applied_counts_the_thinner()
    {
        const double gPerLOfLbPerGal = 119.826427;
        var coat = With(p => p with
        {
            Voc = [new(2.5 * gPerLOfLbPerGal, 0, 0), new(2.5 * gPerLOfLbPerGal, 0, 0)],
            Thinner = new Thinner("solvent", 0.3, 6.8 * gPerLOfLbPerGal / 1000),
        }) with { ThinnerFraction = 0.25 };
        Assert.Equal(3.36, Estimate(coat).Voc!.ActualGPerL / gPerLOfLbPerGal, 0.005);
    }

    [Fact]
    public void Water_as_thinner_leaves_the_voc_less_water_as_it_was()
    {
        var coat = With(p => p with { Voc = [new(80, 0.55, 0), new(120, 0, 0)] });
        // 2 L of A (80 g/L, 55 % water) and 1 L of B (120 g/L): 93.3 g/L, less water 147.4, whatever water is added.
        Assert.Equal((93.3, 147.4), (Math.Round(Estimate(coat).Voc!.ActualGPerL, 1), Math.Round(Estimate(coat).Voc!.LessWaterGPerL, 1)));
        Assert.Equal((91.5, 147.4), (Math.Round(Estimate(coat with { ThinnerFraction = 0.02 }).Voc!.ActualGPerL, 1), Math.Round(Estimate(coat with { ThinnerFraction = 0.02 }).Voc!.LessWaterGPerL, 1)));
    }

    [Theory]
    [InlineData(140.0, "VocOverLimit", Limit.AtYourWord)]
    [InlineData(150.0, null, null)]
    public void A_local_limit_is_held_less_water(double limit, string? code, Limit? hard)
    {
        var coat = With(p => p with { Voc = [new(80, 0.55, 0), new(120, 0, 0)] });
        var reason = Estimate(coat, Invented.Job.Aims with { VocMostGPerL = limit }).Reasons.SingleOrDefault(r => r.Code.StartsWith("Voc", StringComparison.Ordinal));
        Assert.Equal((code, hard), (reason?.Code, reason?.Limit));
        Assert.Equal("VocNotGiven", Estimate(Invented.Coat, Invented.Job.Aims with { VocMostGPerL = limit }).Reasons.Single().Code);
    }

    [Fact]
    public void A_poured_coat_loses_at_its_open_edges_by_the_width_entered()
    {
        var coat = With(p => p with { Method = ApplicationMethod.Poured });
        double RunOff(double widthM)
        {
            var job = Invented.Job with { System = [coat], Tools = Invented.Tools with { RunOffWidthM = widthM } };
            return Estimating.Estimate(job, Invented.Measured(4, edgeM: 3)).Coats[0].Losses.Single(l => l.Kind is LossKind.RunOff).Ml;
        }

        Assert.Equal(165 * 3 * 0.025, RunOff(0.025), 1e-9);
        Assert.Equal(2 * RunOff(0.02), RunOff(0.04), 1e-9);
    }

    [Fact]
    public void Every_reason_and_input_is_said_in_both_languages_and_unit_systems()
    {
        var coat = With(p => p with { Voc = [new(80, 0.55, 0), new(120, 0, 0)], MeasuredUse = [new(5, 165, 1200)] }) with { RoughnessUm = 30, ThinnerFraction = 0.01 };
        var materials = new[] { Estimate(coat, Invented.Job.Aims with { VocMostGPerL = 10 }), Estimate(Invented.Coat, Invented.Job.Aims with { VocMostGPerL = 10 }) };
        Said.InEveryVoice([
            .. materials.SelectMany(m => m.Reasons).SelectMany(r => new[] { r.Text, r.Remedy }),
            .. materials[0].VocBasis!.Inputs.SelectMany(i => new[] { i.Name, i.Value }), .. materials[0].Basis.Inputs.Select(i => i.Name),
        ]);
    }
}
