using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work;

/// <summary>
/// Who of the crew rolls a coat, and who mixes for them. The order search numbers the rollers from 0, and after them the one
/// who mixes.
/// </summary>
/// <param name="Rollers">Numbers in the crew, ascending; at least one.</param>
/// <param name="Mixer">Number in the crew of one who does not roll; null: whoever rolls mixes too.</param>
internal sealed record Hands(IReadOnlyList<Person> Crew, IReadOnlyList<int> Rollers, int? Mixer)
{
    /// <summary>More than this many rollers are in each other's way on a kitchen's tops; the others mix and carry.</summary>
    private const int MostRollers = 4;

    public IReadOnlyList<Pace> Paces => [.. Rollers.Select(person => Crew[person].Pace)];

    /// <summary>Number in the crew of one whom the order search numbers so.</summary>
    public int NumberOf(int hand) => hand < Rollers.Count ? Rollers[hand] : Mixer ?? Rollers[^1];

    /// <summary>Mixing one batch by hand, in whole seconds.</summary>
    public long MixMsOf(int person) => (long)Math.Ceiling(Crew[person].Pace.MixS - 1e-9) * 1000;

    /// <summary>The first rolls or pours; the second, where there is one, mixes.</summary>
    public static Hands FirstAlone(IReadOnlyList<Person> crew) => new(crew, [0], crew.Count > 1 ? 1 : null);

    /// <summary>
    /// One who rolls alone: everyone whom nobody else outdoes. Whoever is no quicker at any part of it needs no fewer sections,
    /// and of people alike the first in the crew is asked.
    /// </summary>
    public static IEnumerable<Hands> Alone(IReadOnlyList<Person> crew) =>
        Enumerable.Range(0, crew.Count)
            .Where(one => !Enumerable.Range(0, crew.Count).Any(other => Outdoes(crew, other, one)))
            .Select(one => Of(crew, [one]));

    /// <summary>Two and more who roll, the quickest of the crew, few first: where others are left, one of them mixes.</summary>
    public static IEnumerable<Hands> Together(IReadOnlyList<Person> crew)
    {
        var quickest = Enumerable.Range(0, crew.Count).OrderBy(person => SquareMetreS(crew[person].Pace)).ToList();
        return Enumerable.Range(2, Math.Max(0, Math.Min(crew.Count, MostRollers) - 1)).Select(count => Of(crew, [.. quickest.Take(count).Order()]));
    }

    private static bool Outdoes(IReadOnlyList<Person> crew, int other, int one)
    {
        var (theirs, own) = (crew[other].Pace, crew[one].Pace);
        return IsNoSlower(theirs, own) && (other < one || !IsNoSlower(own, theirs)) && other != one;
    }

    private static bool IsNoSlower(Pace a, Pace b) =>
        a.WetOutM2PerS >= b.WetOutM2PerS && a.DryPassM2PerS >= b.DryPassM2PerS && a.EdgeMPerS >= b.EdgeMPerS && a.ReloadS <= b.ReloadS && a.WalkS <= b.WalkS;

    /// <summary>One section of a square metre, with a metre of edge.</summary>
    private static double SquareMetreS(Pace pace) => pace.WalkS + pace.ReloadS + (1 / pace.WetOutM2PerS) + (1 / pace.DryPassM2PerS) + (1 / pace.EdgeMPerS);

    private static Hands Of(IReadOnlyList<Person> crew, IReadOnlyList<int> rollers)
    {
        var others = Enumerable.Range(0, crew.Count).Except(rollers).ToList();
        return new Hands(crew, rollers, others.Count == 0 ? null : others.MinBy(person => crew[person].Pace.MixS));
    }
}
