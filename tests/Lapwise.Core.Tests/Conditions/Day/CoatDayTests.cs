using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Conditions.Day;

public sealed class CoatDayTests
{
    private static readonly Product Waited = Invented.Clear with { Recoat = new Recoat(4 * 3600, 24 * 3600, 23), DryToTouch = new TimeAt(3600, 23) };
    private static readonly Coat Coat = Invented.Coat with { Product = Waited };
    private static readonly Job Swinging = Invented.Job with { System = [Coat], Timeline = TimelineAsks.Usual with { DaySwingK = 10 } };

    [Fact]
    public void A_room_without_a_swing_stays_all_day_as_it_was_read()
    {
        var day = CoatDay.Of(Invented.Job, Coat, 14);
        Assert.True(day.IsSteady);
        Assert.All(day.Day.Strip.Hours, h => Assert.Equal((24, 24), (h.CoolestC!.Value, h.WarmestC!.Value), new Near(1e-9)));
        Assert.Equal(4 * 3600, day.Drying.Waits.Single(w => w.For is WaitFor.EarliestRecoat).Seconds!.Value, 1e-6);
    }

    [Fact]
    public void A_coat_that_ends_before_a_cold_night_waits_longer_than_one_that_ends_before_noon()
    {
        double Wait(double hour) => CoatDay.Of(Swinging, Coat, hour).Drying.Waits.Single(w => w.For is WaitFor.EarliestRecoat).Seconds!.Value;
        Assert.True(Wait(23) > Wait(11), $"{Wait(23)} s at night, {Wait(11)} s by day");
    }

    [Fact]
    public void The_curve_ends_where_its_wait_is_over_with_all_of_it_done()
    {
        var day = CoatDay.Of(Swinging, Coat, 14);
        var doneS = day.Drying.Waits.Single(w => w.For is WaitFor.EarliestRecoat).Seconds!.Value;
        Assert.Equal(doneS, day.Curve!.Marks.Single().X);
        Assert.Equal(doneS, day.Curve.Line.Points[^1].X, 1e-6);
        // The wait is run over hourly temperatures, the curve over finer ones.
        Assert.Equal(1, day.Curve.Second!.Points[^1].Y, 0.005);
    }

    [Fact]
    public void A_sheet_without_waits_draws_none() => Assert.Null(CoatDay.Of(Invented.Job, Invented.Coat, 14).Curve);

    [Fact]
    public void The_strip_is_judged_by_the_hours_own_temperatures()
    {
        var cold = Swinging with { Room = Invented.Room with { Air = new AirTemperature(16), Surface = new SurfaceTemperature(16) } };
        var strip = CoatDay.Of(cold, Coat, 14).Day.Strip;
        Assert.Equal(24, strip.Hours.Count);
        Assert.Equal(Verdict.Wait, strip.Hours[3].Verdict);
        Assert.Equal(Verdict.Go, strip.Hours[15].Verdict);
    }

    [Fact]
    public void Water_leaves_along_a_curve_that_falls_and_marks_where_the_stages_change()
    {
        var product = Waited with { VolumeSolids = 0.4, Drying = new Lapwise.Core.Jobs.Drying(Carrier.Water, 0.6, 0.5) };
        var drying = CoatDay.Of(Invented.Job, Coat with { Product = product }, 14).Drying;
        var curve = drying.WaterCurve!;
        Assert.Equal(drying.Water!.ConstantRateS, curve.Marks.Single().X);
        Assert.Equal(CoatDrying.DryShare, curve.Line.Points[^1].Y, 1e-9);
        Assert.All(curve.Line.Points.Zip(curve.Line.Points.Skip(1)), p => Assert.True(p.Second.Y < p.First.Y));
        Assert.Contains("constant rate", drying.WaterLine!(Voice.Default), StringComparison.Ordinal);
    }

    private sealed class Near(double tolerance) : IEqualityComparer<(double, double)>
    {
        public bool Equals((double, double) x, (double, double) y) => Math.Abs(x.Item1 - y.Item1) <= tolerance && Math.Abs(x.Item2 - y.Item2) <= tolerance;
        public int GetHashCode((double, double) pair) => 0;
    }
}
