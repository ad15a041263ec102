using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Tests.Work.Sections;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work;

/// <summary>Why one person rolls although there are more is said for what it is.</summary>
public sealed class WholeFaceTests
{
    private static CoatWork Plan(Product product, int people, double openS = 1500)
    {
        var job = Invented.Job with
        {
            Tops = [CutTops.Top(new OutlineSpec.Rectangle(1.6, 0.6), "oooo").Top],
            Crew = [.. Enumerable.Range(1, people).Select(i => Invented.Person with { Name = $"Person {i}" })],
            System = [Invented.Coat with { Product = product, TestBoard = new OpenTime(openS, Origin.TestBoard) }],
        };
        return Planning.Plan(job, Measuring.Measure(job), Judging.Judge(job)).Coats[0];
    }

    private static readonly Product Poured = Invented.Clear with { Method = ApplicationMethod.Poured, Pour = new PourTimes(12 * 60, [600], (3 * 3600, 6 * 3600)) };

    [Fact]
    public void A_whole_face_or_a_pour_is_said_to_be_one_persons_where_there_are_more()
    {
        foreach (var product in new[] { Invented.Clear with { WholeTopAtOnce = true }, Poured })
        {
            var work = Plan(product, people: 2);
            var said = Assert.Single(work.Reasons, r => r.Code == "WholeFaceByOne");
            Assert.Equal(Limit.Note, said.Limit);
            Assert.Single(work.Sections);
            Assert.All(Invented.Voices, v => Assert.Contains("Person 1", said.Text(v), StringComparison.Ordinal));
            Assert.DoesNotContain(work.Reasons, r => r.Code is "OneRolls" or "MoreHandsDoNotHelp");
            Assert.DoesNotContain(Plan(product, people: 1).Reasons, r => r.Code == "WholeFaceByOne");
        }
    }

    /// <summary>Sections and laps would be no way of doing it.</summary>
    [Fact]
    public void The_usual_ways_stand_only_beside_what_is_done_in_sections()
    {
        Assert.Empty(Plan(Invented.Clear with { WholeTopAtOnce = true }, people: 1).Baselines);
        Assert.Empty(Plan(Poured, people: 1).Baselines);
        Assert.Equal(2, Plan(Invented.Clear, people: 1).Baselines.Count);
    }

    [Fact]
    public void One_who_rolls_alone_is_said_to_keep_the_margin_only_where_that_is_so()
    {
        Assert.Contains(Plan(Invented.Clear, people: 2).Reasons, r => r.Code == "OneRolls");
        Assert.DoesNotContain(Plan(Invented.Clear, people: 1).Reasons, r => r.Code is "OneRolls" or "MoreHandsDoNotHelp");
        var late = Plan(Invented.Clear, people: 2, openS: 20);
        Assert.True(late.LapMarginMs < 0);
        Assert.DoesNotContain(late.Reasons, r => r.Code == "OneRolls");
    }
}
