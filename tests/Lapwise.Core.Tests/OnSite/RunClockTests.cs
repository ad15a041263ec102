using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Core.Tests.OnSite;

public sealed class RunClockTests
{
    private const long Minute = Runs.Minute;

    private static readonly IssuedPlan Plan = Runs.Path();

    private static Phone Begun() => new Phone("a").Taps(new What.Issued(Plan)).Taps(new What.SectionWet("1", 0)).Waits(3 * Minute);

    private static long AgeOfFirst(Phone phone) => phone.RunNow - phone.Run.Sections["1"].WetAtMs;

    [Fact]
    public void An_hour_set_back_in_the_middle_leaves_every_age_as_it_was()
    {
        var phone = Begun().IsSet(-60 * Minute);
        Assert.Equal(3 * Minute, AgeOfFirst(phone));

        phone.Taps(new What.SectionDry("1", 0)).Waits(Minute);
        Assert.Equal(4 * Minute, AgeOfFirst(phone));
        Assert.Contains(phone.Run.Notes, n => n(Voice.Default).Contains("set back by 1 h", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_set_back_stays_so_when_the_page_is_opened_again()
    {
        var phone = Begun().IsSet(-60 * Minute).Taps(new What.SectionDry("1", 0)).Waits(Minute).IsReopened().Waits(Minute);

        Assert.Equal(5 * Minute, AgeOfFirst(phone));
    }

    [Fact]
    public void A_clock_set_back_while_the_page_was_closed_is_said_and_never_makes_a_film_younger()
    {
        var phone = Begun().Taps(new What.SectionDry("1", 0)).IsReopened().IsSet(-30 * Minute);
        Assert.Equal(3 * Minute, AgeOfFirst(phone));

        phone.Taps(new What.SectionWet("2", 0));
        Assert.Contains(phone.Run.Notes, n => n(Voice.Default).Contains("while the page was closed", StringComparison.Ordinal));
    }

    [Fact]
    public void A_phone_that_slept_has_older_films()
    {
        var phone = Begun().IsSet(8 * Minute);
        Assert.Equal(11 * Minute, AgeOfFirst(phone));
    }

    [Fact]
    public void Two_phones_minutes_apart_agree_once_both_have_met_the_server()
    {
        var server = Runs.Nine + (2 * Minute);
        var lead = new Phone("a").Taps(new What.Issued(Plan));
        var helper = new Phone("b", Runs.Nine + (7 * Minute));
        lead.Taps(new What.Paired(server - lead.Now.ClockMs, 80));
        helper.Taps(new What.Paired(server - helper.Now.ClockMs, 60));
        lead.Taps(new What.SectionWet("1", 0));
        lead.Waits(2 * Minute);
        helper.Waits(2 * Minute).Taps(new What.SectionDry("1", 0));

        var section = Folding.Fold([.. lead.Marks, .. helper.Marks])!.Sections["1"];
        Assert.Equal(2 * Minute, section.DryAtMs - section.WetAtMs);
    }

    [Fact]
    public void A_phone_that_never_met_the_server_is_said_where_there_are_two()
    {
        var run = Folding.Fold([.. Begun().Marks, .. new Phone("b").Taps(new What.Noted("hello")).Marks])!;
        Assert.Contains("a, b", Assert.Single(run.Notes)(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void Setting_the_clock_back_at_any_time_never_changes_an_age() =>
        Gen.Select(Gen.Int[0, 3600_000], Gen.Int[0, 5], Gen.Int[1, 600_000].Array[6]).Sample((back, when, waits) =>
        {
            var (set, still) = (Go(when, back), Go(when, 0));
            Assert.Equal(still, set);

            long[] Go(int at, int by)
            {
                var phone = new Phone("a").Taps(new What.Issued(Plan));
                for (var i = 0; i < waits.Length; i++)
                {
                    phone.Waits(waits[i]);
                    if (i == at) phone.IsSet(-by);
                    phone.Taps(new What.SectionWet($"{(i % 4) + 1}", 0));
                }

                // Less than the network's own trimming is not told from it.
                return by is > 0 and <= 2000 ? Go(at, 0) : [.. phone.Run.Log.Select(l => l.AtMs - phone.Run.Log[0].AtMs)];
            }
        }, iter: 300);
}
