using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Remedies;

namespace Lapwise.Core.Tests.Work.Remedies;

public sealed class AgePartsTests
{
    // Walks 8 s and loads 20 s for each section.
    private static readonly IReadOnlyList<Person> Crew = [Invented.Person, Invented.Person];

    [Fact] // By hand: sections 1 and 3 of 100 s with section 2 and a mixing of 60 s between them.
    public void OfWorst_counts_rolling_reloading_mixing_and_waiting_by_hand()
    {
        var work = Plans.Of(600, Origin.DataSheet,
            [Plans.Section("1", 0, 100_000, 200_000, "A"), Plans.Section("2", 0, 200_000, 280_000, "A"), Plans.Section("3", 0, 350_000, 450_000, "B")],
            [new Lap("1", "3", LapKind.Flat, 0.6, [], 350_000), new Lap("1", "2", LapKind.Flat, 0.6, [], 180_000)],
            [new Batch("A", 0, 0, 100_000, 900_000, 100, 120, ["1", "2"]), new Batch("B", 0, 290_000, 350_000, 900_000, 100, 120, ["3"])]);
        Assert.Equal(new AgeParts("1", "3", 350_000, 72_000 + 72_000, 52_000, 3 * 28_000, 60_000, 10_000, 0), AgeParts.OfWorst(work, Crew));
    }

    [Fact]
    public void OfWorst_parts_sum_to_the_age_and_none_is_negative() =>
        Gen.Long[1, 400].Array[1, 8].Sample(times =>
        {
            var work = Plans.Path(900, Origin.DataSheet, 150_000, [.. times.Select(t => t * 1000)]);
            var parts = AgeParts.OfWorst(work, Crew)!;
            Assert.Equal(work.OpenTimeMs - work.LapMarginMs, parts.AgeMs);
            Assert.Equal(parts.AgeMs, parts.Parts.Sum(p => p.Ms));
            Assert.All(new[] { parts.OwnRollingMs, parts.BetweenMs, parts.ReloadMs, parts.MixingMs, parts.WaitingMs }, ms => Assert.True(ms >= 0));
        });

    [Fact]
    public void OfWorst_of_nothing_is_nothing() => Assert.Null(AgeParts.OfWorst(Plans.Of(600, Origin.DataSheet, [], [], []), Crew));

    [Fact]
    public void OfWorst_names_one_section_as_one_and_a_pour_as_a_pour()
    {
        var work = Plans.Path(900, Origin.DataSheet, 150_000, 90_000);
        var poured = work with { Coat = work.Coat with { Product = work.Coat.Product with { Method = ApplicationMethod.Poured } } };
        Assert.Equal("rolling the section", AgeParts.OfWorst(work, Crew)!.Parts[0].Name(Voice.Default));
        Assert.Equal("pouring and levelling it", AgeParts.OfWorst(poured, Crew)!.Parts[0].Name(Voice.Default));
    }

    [Fact]
    public void OfWorst_is_said_in_both_languages()
    {
        var parts = AgeParts.OfWorst(Plans.Path(900, Origin.DataSheet, 150_000, 90_000, 90_000), Crew)!;
        Said.InEveryVoice([parts.Name, .. parts.Parts.Select(p => p.Name)]);
    }
}
