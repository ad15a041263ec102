using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Work.Remedies;

/// <summary>
/// What eats the margin: the age of the worst lap or section, by how the person who closes it spends that time.
/// Milliseconds; the parts sum to the age, counted with what the age of the batch had used before it.
/// </summary>
/// <param name="A">The section it begins with.</param>
/// <param name="B">The section it ends with; the same where a section itself is the worst.</param>
/// <param name="OwnRollingMs">Rolling and edges of the two sections themselves.</param>
/// <param name="BetweenMs">Rolling and edges of other sections in between.</param>
/// <param name="ReloadMs">Walking to the next place and loading the roller.</param>
/// <param name="MixingMs">Mixing inside the lap.</param>
/// <param name="WaitingMs">Waiting for a batch or for the other.</param>
/// <param name="BatchAgeMs">Open time that was gone when the film was begun, since its batch had stood.</param>
public sealed record AgeParts(string A, string B, long AgeMs, long OwnRollingMs, long BetweenMs, long ReloadMs, long MixingMs, long WaitingMs, long BatchAgeMs)
{
    /// <summary>The coat is poured, not rolled.</summary>
    public bool IsPoured { get; init; }

    public Phrase Name => A == B
        ? v => v.Say($"section {A}", $"sección {A}")
        : v => v.Say($"lap {A}–{B}", $"solape {A}–{B}");

    /// <summary>Each part in words with its time, the largest first; parts of nothing left out.</summary>
    public IReadOnlyList<(Phrase Name, long Ms)> Parts =>
    [
        .. new (Phrase Name, long Ms)[]
        {
            (v => (IsPoured, A == B) switch
            {
                (true, true) => v.Say("pouring and levelling it", "verterla y nivelarla"),
                (true, false) => v.Say("pouring and levelling the two", "verter y nivelar las dos"),
                (false, true) => v.Say("rolling the section", "aplicar la sección"),
                _ => v.Say("rolling the two sections", "aplicar las dos secciones"),
            }, OwnRollingMs),
            (v => IsPoured ? v.Say("pours in between", "vertidos intermedios") : v.Say("sections in between", "secciones intermedias"), BetweenMs),
            (v => v.Say("walking and reloading", "caminar y recargar"), ReloadMs),
            (v => v.Say("mixing", "mezclar"), MixingMs),
            (v => v.Say("waiting", "esperar"), WaitingMs),
            (v => v.Say("age of the batch", "edad de la mezcla"), BatchAgeMs),
        }.Where(p => p.Ms > 0).OrderByDescending(p => p.Ms),
    ];

    /// <summary>Null for a plan without sections.</summary>
    public static AgeParts? OfWorst(CoatWork work, IReadOnlyList<Person> crew)
    {
        if (work.Sections.Count == 0) return null;
        var section = work.Sections.ToDictionary(s => s.Id, StringComparer.Ordinal);
        var longest = work.Sections.MinBy(work.MarginMs)!;
        var lap = work.Laps.Where(l => l.Kind != LapKind.Break).MinBy(work.MarginMs);
        var (a, b, used) = lap is null || work.MarginMs(lap) > work.MarginMs(longest) ? (longest, longest, longest.UsedMs) : (section[lap.A], section[lap.B], lap.UsedMs);
        if (a.StartMs > b.StartMs) (a, b) = (b, a);

        var (from, to) = (a.StartMs, Math.Max(a.EndMs, b.EndMs));
        var closer = a.EndMs > b.EndMs ? a.Person : b.Person;
        var fixedMs = (long)Math.Round((crew[closer].Pace.WalkS + crew[closer].Pace.ReloadS) * 1000);
        long own = 0, between = 0, reload = 0;
        foreach (var s in work.Sections.Where(s => s.Person == closer))
        {
            var walked = Within(s.StartMs, Math.Min(s.StartMs + fixedMs, s.EndMs));
            var rolled = Within(s.StartMs, s.EndMs) - walked;
            reload += walked;
            if (s.Id == a.Id || s.Id == b.Id) own += rolled;
            else between += rolled;
        }

        var mixing = work.Batches.Where(m => m.MixedBy == closer).Sum(m => Within(m.MixStartMs, m.MixEndMs));
        return new AgeParts(a.Id, b.Id, to - from + used, own, between, reload, mixing, to - from - own - between - reload - mixing, used)
        {
            IsPoured = work.Coat.Product.Method is ApplicationMethod.Poured,
        };

        long Within(long start, long end) => Math.Max(0, Math.Min(end, to) - Math.Max(start, from));
    }
}
