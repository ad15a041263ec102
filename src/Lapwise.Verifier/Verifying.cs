using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Verifier.Rules;

namespace Lapwise.Verifier;

/// <summary>
/// Does a plan do what it says? Everything is worked out again from the job with geometry and arithmetic of its own;
/// nothing here knows how plans are found.
/// </summary>
public static class Verifying
{
    public static Verification Verify(Job job, MeasuredJob measured, JobConditions conditions, Plan plan)
    {
        var findings = new Findings();
        findings.LookAt(v => v.Say("coats of the system", "capas del sistema"));
        findings.Holds(plan.Coats.Count == job.System.Count, "CoatsDiffer", "coats",
            v => v.Say($"The plan has {plan.Coats.Count} coats, the job {job.System.Count}.", $"El plan tiene {plan.Coats.Count} capas, el trabajo {job.System.Count}."));

        var cases = plan.Coats.Zip(job.System).Zip(conditions.Coats)
            .Select((c, i) => new CoatCase(i, c.First.First, c.First.Second, c.Second, job, UnderCoat(measured, c.First.Second))).ToList();
        Action<CoatCase, Findings>[] rules =
        [
            Clocks.Check, Partition.Check, Crew.Check, SectionTimes.Check, Reach.Check, Laps.Check, Ages.Check, Batches.Check, Steps.Check, Tickets.Check, Claims.Check,
        ];
        foreach (var rule in rules)
            foreach (var coat in cases) rule(coat, findings);
        return findings.Verification;
    }

    /// <summary>A coat is rolled on the tops it names and on no other; on all where it names none.</summary>
    private static MeasuredJob UnderCoat(MeasuredJob measured, Coat coat) => coat.OnTops is { Count: 0 }
        ? measured
        : measured with { Tops = [.. measured.Tops.Where(t => coat.OnTops.Any(name => string.Equals(name, t.Top.Name, StringComparison.OrdinalIgnoreCase)))] };
}
