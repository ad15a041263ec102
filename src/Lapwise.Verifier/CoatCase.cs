using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;

namespace Lapwise.Verifier;

/// <summary>One coat under examination: what the plan says beside what the job says.</summary>
internal sealed class CoatCase
{
    public CoatCase(int index, PlannedCoat plan, Coat coat, CoatConditions conditions, Job job, MeasuredJob measured)
    {
        (Plan, Coat, Conditions, Job, Measured) = (plan, coat, conditions, job, measured);
        Place = $"coats[{index}]";
        Faces = measured.Tops.SelectMany(t => t.Faces).ToDictionary(f => f.Id, StringComparer.Ordinal);
        Crew = job.Crew.ToDictionary(p => p.Name, StringComparer.Ordinal);
        Sections = [.. plan.Sections.Where(s => Faces.ContainsKey(s.Face) && Usable(s)).Select(s => new SectionCase(s, Faces[s.Face]))];
        ById = Sections.DistinctBy(s => s.Plan.Id).ToDictionary(s => s.Plan.Id, StringComparer.Ordinal);
    }

    public PlannedCoat Plan { get; }
    public Coat Coat { get; }
    public CoatConditions Conditions { get; }
    public Job Job { get; }
    public MeasuredJob Measured { get; }
    public string Place { get; }
    public IReadOnlyDictionary<string, Face> Faces { get; }
    public IReadOnlyDictionary<string, Person> Crew { get; }
    /// <summary>Sections whose face is known and whose outline can be drawn.</summary>
    public IReadOnlyList<SectionCase> Sections { get; }
    public IReadOnlyDictionary<string, SectionCase> ById { get; }

    public string At(PlannedSection section) => $"{Place} section {section.Id}";
    public string At(PlannedBatch batch) => $"{Place} batch {batch.Id}";
    public string At(PlannedLap lap) => $"{Place} lap {lap.A}-{lap.B}";

    public string At(PlannedStep step) => $"{Place} step {step.Kind} {string.Join(' ', step.Sections)}";

    /// <summary>What is poured, or done over a whole face at once, may be reached from every side one can stand at.</summary>
    public bool WalksRound => Coat.Product.Method == ApplicationMethod.Poured || Coat.Product.WholeTopAtOnce;

    public static bool Usable(PlannedSection s) =>
        s.OutlineM.Count >= 3 && s.HolesM.Append(s.OutlineM).All(ring => ring.Count >= 3 && ring.All(p => p.Length == 2 && p.All(double.IsFinite))) && s.StandAt.Length == 2;
}

/// <summary>A planned section with its outline as a region and the face it is a part of.</summary>
internal sealed class SectionCase(PlannedSection plan, Face face)
{
    public PlannedSection Plan => plan;
    public Face Face => face;
    public Region Region { get; } = new(plan.HolesM.Prepend(plan.OutlineM).Select(ring => (IReadOnlyList<PointM>)[.. ring.Select(p => new PointM(p[0], p[1]))]));
    public PointM StandAt => new(plan.StandAt[0], plan.StandAt[1]);
}

/// <summary>How far a plan may be from the checker's own numbers.</summary>
internal static class Tolerance
{
    /// <summary>Half a millisecond: plans are written in whole ones.</summary>
    public const double S = 0.0005;
    /// <summary>Planned parts of a section are rounded up to a whole second.</summary>
    public const double RoundedUpS = 1 + S;
    /// <summary>A line shorter than 5 mm at a corner is no lap; two such may be missing or counted.</summary>
    public const double LapM = 0.011;
    /// <summary>A sixteenth of an inch: what a tape does not tell.</summary>
    public const double TapeM = (0.0254 / 16) + 1e-5;
    public const double Ratio = 1e-6;
    public const double Ml = 1e-6;

    /// <summary>Two micrometres along the boundary. Sections follow the face's own chords, so arcs ask for no more.</summary>
    public static double AreaM2(double perimeterM) => 1e-7 + (perimeterM * 2e-6);
}
