namespace Lapwise.Core.OnSite;

/// <summary>
/// How long each person takes in this run, as a multiple of the plan: the geometric mean of sections tapped at both ends, held
/// back by two sections at the plan's own pace, so that one slow section does not turn the plan over. Nothing assumed is learned from.
/// </summary>
internal sealed class PaceSeen
{
    private const double PlannedSections = 2;
    private const double Least = 0.5;
    private const double Most = 3;

    private readonly Dictionary<int, double> _factor;

    private PaceSeen(Dictionary<int, double> factor) => _factor = factor;

    public static PaceSeen Of(Run run) => new(run.Sections.Values
        .Where(s => s is { DryAtMs: not null, IsAssumed: false })
        .Select(s => (s.Person, Took: s.DryAtMs!.Value - s.WetAtMs - run.HaltedMs(s.WetAtMs, s.DryAtMs.Value), Planned: run.SectionOf(s.Section).TimeOf(s.Person)))
        .Where(s => s.Took > 0 && s.Planned > 0)
        .GroupBy(s => s.Person)
        .ToDictionary(g => g.Key, g => Math.Clamp(Math.Exp(g.Sum(s => Math.Log((double)s.Took / s.Planned)) / (PlannedSections + g.Count())), Least, Most)));

    /// <summary>1 where nothing was seen of this person.</summary>
    public double Of(int person) => _factor.GetValueOrDefault(person, 1);

    public long TimeOf(IssuedSection section, int person) => (long)Math.Ceiling(section.TimeOf(person) * Of(person));
}
