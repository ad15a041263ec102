using System.Text.RegularExpressions;

namespace Lapwise.Cli.Tests;

/// <summary>Jobs that cannot work, or only just can: a refusal with its cure or a bounded answer, never a crash.</summary>
public sealed partial class HardJobsTests
{
    private static readonly string Sample = File.ReadAllText(Shell.Sample("jumbo-island.job.yaml"));

    [Fact]
    public void A_top_with_no_open_side_says_where_to_stand()
    {
        var shell = Plan(OpenSide().Replace(Sample, "{ kind: wall }"));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("there is nowhere to stand", shell.Out, StringComparison.Ordinal);
        Assert.Contains("Mark the side you stand at as open", shell.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_section_out_of_everybodys_reach_says_by_how_much()
    {
        var shell = Plan(Sample.Replace("reach: 36 in", "reach: 12 in", StringComparison.Ordinal));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("past the reach of 1' 0\"", Line().Replace(shell.Out, " "), StringComparison.Ordinal);
    }

    [Fact]
    public void Nobody_in_the_crew_is_refused_at_its_line()
    {
        var shell = Plan(Crew().Replace(Sample, "crew: []\n"));
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith("crew, line ", Assert.Single(shell.Faults), StringComparison.Ordinal);
    }

    [Fact]
    public void Mixing_that_takes_longer_than_the_pot_life_is_said()
    {
        var shell = Plan(Sample.Replace("mix: 2 min 30 s", "mix: 58 min", StringComparison.Ordinal));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("Mixing takes 58 min; the mix lives", Line().Replace(shell.Out, " "), StringComparison.Ordinal);
    }

    [Fact]
    public void Tops_that_do_not_touch_are_planned_one_after_another()
    {
        var (from, to) = (Sample.IndexOf("  - name: Great island", StringComparison.Ordinal), Sample.IndexOf("system:", StringComparison.Ordinal));
        var shell = Plan(Sample.Insert(to, Sample[from..to].Replace("Great island", "Second island", StringComparison.Ordinal)));
        Assert.NotEqual(Outcome.BadInput, shell.Outcome);
        Assert.Matches(@"(?m)^ +\d+  Second island ", shell.Out);
    }

    [Fact]
    public void Sections_so_small_that_there_are_thousands_are_made_larger_and_said()
    {
        var job = Sample.Replace("largestSection: 8 ft²", "largestSection: 0.2 ft²", StringComparison.Ordinal).Replace("length: 12' 0\"", "length: 60' 0\"", StringComparison.Ordinal)
            .Replace("      diagonals:\n        - { from: A, to: C, length: 13' 0\" }\n", "", StringComparison.Ordinal);
        var (from, to) = (job.IndexOf("  - name: Great island", StringComparison.Ordinal), job.IndexOf("system:", StringComparison.Ordinal));
        var shell = Plan(job.Insert(to, string.Concat(Enumerable.Range(2, 3).Select(i => job[from..to].Replace("Great island", $"Island {i}", StringComparison.Ordinal)))));
        Assert.Equal(Outcome.DoesNotWork, shell.Outcome);
        Assert.Contains("would be too many to plan at one time", Line().Replace(shell.Out, " "), StringComparison.Ordinal);
    }

    private static Shell Plan(string job)
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("lapwise-hard").FullName, "hard.job.yaml");
        try
        {
            File.WriteAllText(file, job);
            return Shell.Run("plan", file, "--products", Shell.Sample("products"));
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        }
    }

    [GeneratedRegex(@"\{ kind: open, profile: \{[^}]*\} \}", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex OpenSide();

    [GeneratedRegex(@"crew:\n(?:  .*\n)+", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex Crew();

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant, 30_000)]
    private static partial Regex Line();
}
