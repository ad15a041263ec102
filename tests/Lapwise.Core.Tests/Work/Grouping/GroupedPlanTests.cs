using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;

namespace Lapwise.Core.Tests.Work.Grouping;

/// <summary>Small pieces in a plan: shelves of one section each, open all round.</summary>
public sealed class GroupedPlanTests
{
    private static Job Shelves(double largestBatchMl, params IEnumerable<double> lengthsM) => Invented.Job with
    {
        Tools = Invented.Tools with { RollerChargeMl = 0, TrayResidueMl = 0, CupResidueMl = 0, LargestBatchMl = largestBatchMl },
        Tops = [.. lengthsM.Select((length, i) => Shelf($"Shelf {i + 1}", length))],
    };

    private static Top Shelf(string name, double lengthM)
    {
        var open = new Edge.Open(new Profile(ProfileShape.Measured, 0, 0, 0, 0.0001));
        return new Top(name, 0.02, new OutlineSpec.Rectangle(lengthM, 0.3) { TapeStepM = 0.001 }, "ABCD".ToDictionary(c => c, Edge (_) => open), [], [], null);
    }

    private static CoatWork Plan(Job job) => Planning.Plan(job, Measuring.Measure(job), Judging.Judge(job)).Coats[0];

    /// <summary>The tops in the order of work.</summary>
    private static IEnumerable<string> Sequence(CoatWork work) => work.Sections.Select(s => s.Face.Top).Distinct();

    // 0.3 m deep at 165 µm: 49.5 mL for each metre of length. Two batches of 105 mL hold 1.2 + 0.8 m twice.
    [Fact]
    public void Plan_pieces_that_waste_batches_as_entered_are_grouped()
    {
        var work = Plan(Shelves(105, 1.2, 1.2, 0.8, 0.8));
        Assert.Equal(2, work.Batches.Count);
        Assert.Equal(["Shelf 1", "Shelf 3", "Shelf 2", "Shelf 4"], Sequence(work));
        Assert.True(work.Holds);
    }

    [Fact]
    public void Plan_pieces_that_need_no_more_batches_stay_as_entered()
    {
        var work = Plan(Shelves(105, 1.2, 0.8, 0.8, 1.2));
        Assert.Equal(2, work.Batches.Count);
        Assert.Equal(["Shelf 1", "Shelf 2", "Shelf 3", "Shelf 4"], Sequence(work));
    }

    [Fact]
    public void Plan_a_piece_too_large_for_a_batch_leaves_the_entered_order() =>
        Assert.Equal(["Shelf 1", "Shelf 2"], Sequence(Plan(Shelves(70, 0.5, 2.4))).Take(2));

    [Fact]
    public void Plan_every_batch_of_grouped_pieces_holds_them_and_outlives_them() =>
        (from lengths in Gen.Double[0.4, 1.4].Array[2, 6] from batch in Gen.Double[75, 200] select (lengths, batch)).Sample(t =>
        {
            var work = Plan(Shelves(t.batch, t.lengths));
            if (!work.Holds) return;
            Assert.Equal(t.lengths.Length, Sequence(work).Count());
            Assert.All(work.Batches, b => Assert.True(b.VolumeMl <= t.batch + 1e-6));
            Assert.All(work.Batches, b => Assert.All(work.Sections.Where(s => s.Batch == b.Id), s => Assert.True(s.EndMs <= b.UseByMs)));
        }, iter: 40);
}
