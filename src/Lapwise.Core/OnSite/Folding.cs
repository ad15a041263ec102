using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>
/// What the marks of a run come to. The answer depends on the set of marks alone: given twice, or in another order, it is the same.
/// </summary>
public static class Folding
{
    /// <summary>Null while the mark that issued the plan has not arrived.</summary>
    public static Run? Fold(IEnumerable<MarkDocument> marks)
    {
        var unique = marks.DistinctOnArrival();
        var clock = RunClock.Of([.. unique.Select(u => u.Mark)]);
        var ordered = unique
            .OrderBy(u => clock.MadeAt(u.Mark)).ThenBy(u => u.Mark.Stamp.Made.Device, StringComparer.Ordinal)
            .ThenBy(u => u.Mark.Stamp.Number).ThenBy(u => u.Mark.Stamp.Id, StringComparer.Ordinal).ToList();
        var undone = Undone([.. ordered.Select(u => u.Mark)]);
        var log = ordered.ConvertAll(u => new LoggedMark(u.Mark, u.Document, clock.HappenedAt(u.Mark), clock.MadeAt(u.Mark), !undone.Contains(u.Mark.Stamp.Id)));
        var counting = log.Where(l => l.Counts).ToList();
        if (Of<What.Issued>(counting).FirstOrDefault() is not { What.Plan: { } plan } issued) return null;

        var left = Of<What.StoppedBefore>(counting).SelectMany(s => s.What.Left).ToHashSet(StringComparer.Ordinal);
        return new Run(
            plan, clock, log, SectionsOf(plan, counting), BatchesOf(counting),
            Of<What.StepDone>(counting).GroupBy(s => s.What.Step, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Min(s => s.Logged.AtMs), StringComparer.Ordinal),
            HaltsOf(counting),
            Of<What.Replanned>(counting).LastOrDefault() is { What: { } replanned } ? replanned.Turns : Issuing.TurnsOf(plan),
            left,
            Of<What.Checked>(counting).Select(c => c.What.Point).ToHashSet(StringComparer.Ordinal),
            Of<What.TakenUp>(counting).GroupBy(t => t.What.Code, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().What.Why, StringComparer.Ordinal),
            NotesOf(plan, clock, counting),
            Of<What.Led>(counting).LastOrDefault() is { What: { } led } ? led.Device : issued.Logged.Mark.Stamp.Made.Device)
        {
            Room = RoomFollowing.Read(plan, Of<What.Reading>(counting).Select(r => (r.What, r.Logged.AtMs))),
        };
    }

    private static IEnumerable<(T What, LoggedMark Logged)> Of<T>(IEnumerable<LoggedMark> log) where T : What =>
        log.Where(l => l.Mark.What is T).Select(l => ((T)l.Mark.What, l));

    /// <summary>Of two marks with one id the same one is kept, whichever came first.</summary>
    private static List<(Mark Mark, MarkDocument Document)> DistinctOnArrival(this IEnumerable<MarkDocument> marks) =>
        [.. marks.GroupBy(m => m.Id, StringComparer.Ordinal).Select(same => same.MinBy(Written, StringComparer.Ordinal)!).Select(d => (MarkReading.Read(d), d))];

    private static string Written(MarkDocument d) => System.Text.Json.JsonSerializer.Serialize(d, RunJson.Default.MarkDocument);

    /// <summary>Marks that an undoing names, unless that undoing is itself undone. Undoings that name each other in a circle count.</summary>
    private static HashSet<string> Undone(IReadOnlyList<Mark> marks)
    {
        var undoings = marks.Where(m => m.What is What.Undone).ToLookup(m => ((What.Undone)m.What).Mark, m => m.Stamp.Id, StringComparer.Ordinal);
        // Without its plan a run would be nothing, and what clocks have said of each other stays true.
        return [.. marks.Where(m => m.What is not (What.Issued or What.Paired)).Select(m => m.Stamp.Id).Where(id => IsUndone(id, []))];

        bool IsUndone(string id, HashSet<string> asked) => asked.Add(id) && undoings[id].Any(by => !IsUndone(by, [.. asked]));
    }

    /// <summary>What was tapped beats what was assumed. Of several taps the film is taken as the older: begun at the first, done at the last.</summary>
    private static IReadOnlyDictionary<string, SectionDone> SectionsOf(IssuedPlan plan, List<LoggedMark> log)
    {
        var wet = Of<What.SectionWet>(log).ToLookup(w => w.What.Section, StringComparer.Ordinal);
        var dry = Of<What.SectionDry>(log).ToLookup(d => d.What.Section, StringComparer.Ordinal);
        var sections = new Dictionary<string, SectionDone>(StringComparer.Ordinal);
        foreach (var section in plan.Sections)
        {
            var begun = Tapped([.. wet[section.Id].Select(w => w.Logged)]);
            var done = Tapped([.. dry[section.Id].Select(d => d.Logged)]);
            if (begun.Count == 0 && done.Count == 0) continue;
            var last = done.MaxBy(d => d.AtMs);
            // Done without having been begun: it took the time the plan gives it.
            var person = begun.Count > 0 ? ((What.SectionWet)begun[0].Mark.What).Person : ((What.SectionDry)last!.Mark.What).Person;
            var from = begun.Count > 0 ? begun.Min(b => b.AtMs) : last!.AtMs - section.TimeOf(person);
            sections[section.Id] = new SectionDone(
                section.Id, person, from, begun.Count == 0 || begun[0].Mark.Stamp.Assumed,
                last is null ? null : Math.Max(from, last.AtMs), last?.Mark.Stamp.Assumed ?? false,
                begun.Select(b => ((What.SectionWet)b.Mark.What).Batch).FirstOrDefault(b => b is not null));
        }

        return sections;
    }

    private static List<LoggedMark> Tapped(List<LoggedMark> marks) =>
        marks.Exists(m => !m.Mark.Stamp.Assumed) ? marks.FindAll(m => !m.Mark.Stamp.Assumed) : marks;

    private static IReadOnlyList<BatchDone> BatchesOf(List<LoggedMark> log) =>
    [
        .. Of<What.BatchMixed>(log).GroupBy(b => b.What.Batch, StringComparer.Ordinal)
            .Select(g => (g.Key, Marks: Tapped([.. g.Select(b => b.Logged)])))
            .Select(b => (b.Key, First: b.Marks.MinBy(m => m.AtMs)!))
            .Select(b => new BatchDone(b.Key, ((What.BatchMixed)b.First.Mark.What).Person, b.First.AtMs, b.First.Mark.Stamp.Assumed))
            .OrderBy(b => b.AtMs).ThenBy(b => b.Batch, StringComparer.Ordinal),
    ];

    private static IReadOnlyList<Halt> HaltsOf(List<LoggedMark> log)
    {
        var halts = new List<Halt>();
        foreach (var logged in log.Where(l => l.Mark.What is What.Paused or What.Resumed).OrderBy(l => l.AtMs))
        {
            if (logged.Mark.What is What.Paused)
            {
                if (halts is not [.., { ToMs: null }]) halts.Add(new Halt(logged.AtMs, null));
            }
            else if (halts is [.., { ToMs: null } open])
            {
                halts[^1] = open with { ToMs = logged.AtMs };
            }
        }

        return halts;
    }

    private static IReadOnlyList<Phrase> NotesOf(IssuedPlan plan, RunClock clock, List<LoggedMark> log)
    {
        var notes = new List<Phrase>(clock.Assumed);
        var mixed = Of<What.BatchMixed>(log).Any();
        foreach (var never in plan.Against.Where(a => mixed && a.Limit is Limit.Never))
            notes.Add(v => v.Say($"It was mixed although nothing may be mixed against this: {never.En}", $"Se mezcló aunque contra esto no se mezcla nunca: {never.Es}"));
        foreach (var kind in log.Where(l => l.Mark.What is What.NotKnown).Select(l => l.Document.Kind).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
            notes.Add(v => v.Say($"Marks of the kind \"{kind}\" are not known to this program; they are kept.", $"Este programa no conoce las marcas del tipo «{kind}»; se conservan."));
        return notes;
    }
}
