namespace Lapwise.Benchmarks.Tests;

/// <summary>The core's order search against a general solver (CP-SAT of Google.OrTools), which shares no code with it.</summary>
public sealed class ContestTests
{
    public static TheoryData<string, int> Small =>
        new([.. Families.Of(seed: 11, [12], each: 2).Select((x, i) => (x.Family, i))]);

    [Theory]
    [MemberData(nameof(Small))]
    public void The_core_and_the_general_solver_prove_the_same_worst_age(string family, int index)
    {
        var instance = Families.Of(seed: 11, [12], each: 2)[index];
        var row = Contest.Solve(instance, limitS: 60);

        Assert.Equal(family, instance.Family);
        Assert.True(row.Own.Proven && row.Rival.Proven, $"{row.Own} {row.Rival}");
        Assert.Equal(row.Rival.WorstLapAgeS, row.Own.WorstLapAgeS);
    }

    [Fact]
    public void The_same_seed_gives_the_same_instances_and_another_seed_others()
    {
        var once = Families.Of(5, Families.Sizes, 1);
        var again = Families.Of(5, Families.Sizes, 1);
        var other = Families.Of(6, Families.Sizes, 1);

        Assert.Equal(once.SelectMany(i => i.Seconds), again.SelectMany(i => i.Seconds));
        Assert.NotEqual(once.SelectMany(i => i.Seconds), other.SelectMany(i => i.Seconds));
    }

    [Fact]
    public void Every_instance_has_the_sections_it_is_named_for_and_no_lap_with_itself() =>
        Assert.All(Families.Sizes, size => Assert.All(Families.Of(1, [size], 3), i =>
        {
            Assert.Equal(size, i.Count);
            Assert.All(i.Laps, l => Assert.True(l.A != l.B && l.A >= 0 && l.B >= 0 && l.A < size && l.B < size));
        }));

    /// <summary>A path of 5, 1, 4, 2, 3 in its own order: the worst lap age from start to finish is 5 + 1.</summary>
    [Fact]
    public void The_check_of_an_order_counts_from_the_earlier_start_to_the_later_end()
    {
        var path = new Instance("path", "5", [5, 1, 4, 2, 3], [(0, 1), (1, 2), (2, 3), (3, 4)]);

        Assert.Equal(6, path.WorstLapAgeS([0, 1, 2, 3, 4]));
        Assert.Equal(10, path.WorstLapAgeS([0, 2, 1, 3, 4]));
    }
}
