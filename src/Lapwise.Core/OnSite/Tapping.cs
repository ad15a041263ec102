using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>Something to be marked, before a device has stamped it.</summary>
/// <param name="IsAssumed">Filled in by the program.</param>
/// <param name="BackMs">How long ago it happened.</param>
public sealed record ToMark(What What, bool IsAssumed = false, long BackMs = 0);

/// <summary>What one tap comes to: one mark or a few, or the reason why not.</summary>
public static class Tapping
{
    /// <summary>
    /// The one big tap of a person: the section is dry and the next is begun, or A and B are together. A and B are not brought
    /// together against a hold.
    /// </summary>
    /// <param name="backMs">How long ago it happened.</param>
    public static (IReadOnlyList<ToMark> Marks, Reason? Refusal) Main(Run run, long nowMs, int person, long backMs = 0)
    {
        if (Presenting.Present(run, nowMs).People.FirstOrDefault(p => p.Person == person) is not { } mine) return ([], null);
        var meant = Meant(run, mine);
        return meant.Any(m => m is What.BatchMixed) && Refused(run) is { } refusal ? ([], refusal)
            : Dated(run, nowMs, [.. meant.Select(m => new ToMark(m, BackMs: backMs))]);
    }

    /// <summary>What the one big tap of a person would mark.</summary>
    public static IReadOnlyList<What> Meant(Run run, PersonNow mine)
    {
        return mine switch
        {
            { Now: Duty.Rolling(var section, _), Then: Duty.Begin next } => [new What.SectionDry(section.Id, mine.Person), .. Begin(next)],
            { Now: Duty.Rolling(var section, _) } => [new What.SectionDry(section.Id, mine.Person)],
            { Now: Duty.Begin next } => Begin(next),
            { Now: Duty.Mixing, Then: Duty.Begin next } => Begin(next),
            { Now: Duty.Mixing, Then: Duty.Mix(var batch) } => [new What.BatchMixed(batch.Id, mine.Person)],
            { Now: Duty.Wait(_, Duty.Begin next) } => Begin(next),
            { Now: Duty.Mix(var batch) } => [new What.BatchMixed(batch.Id, mine.Person)],
            { Now: Duty.Wait(_, Duty.Mix(var batch)) } => [new What.BatchMixed(batch.Id, mine.Person)],
            _ => [],
        };

        IReadOnlyList<What> Begin(Duty.Begin next) => run.IsBegun(next.Section.Id) ? [] : [new What.SectionWet(next.Section.Id, mine.Person, next.Batch)];
    }

    /// <summary>Marks as they are, unless one is dated back to before what it follows.</summary>
    public static (IReadOnlyList<ToMark> Marks, Reason? Refusal) Dated(Run run, long nowMs, IReadOnlyList<ToMark> marks) =>
        DatingBack.Refused(run, nowMs, marks) is { } refusal ? ([], refusal) : (marks, null);

    /// <summary>The latest marks that a device can take back: those of its last tap.</summary>
    public static IReadOnlyList<LoggedMark> LastOf(Run run, string device) =>
        run.Log.LastOrDefault(l => l.Counts && l.Mark.Stamp.Made.Device == device && l.Mark.What is What.BatchMixed or What.SectionWet or What.SectionDry or What.StepDone or What.Paused or What.Resumed or What.StoppedBefore) is { } last
            ? [.. run.Log.Where(l => l.Counts && l.Mark.Stamp.Made == last.Mark.Stamp.Made && l.Mark.What is not (What.Replanned or What.Issued or What.Paired or What.Undone))]
            : [];

    public static IReadOnlyList<ToMark> TakenBack(IReadOnlyList<LoggedMark> tap) => [.. tap.Select(l => new ToMark(new What.Undone(l.Mark.Stamp.Id)))];

    /// <summary>
    /// "I am here": the section is being rolled now. Whatever must have happened before is filled in as assumed: the same person's
    /// sections before it in the order, spread over the time since their last mark, the batch it is rolled from and those mixed ahead.
    /// </summary>
    /// <param name="person">Who is there.</param>
    public static (IReadOnlyList<ToMark> Marks, Reason? Refusal) Here(Run run, long nowMs, string section, int person, long backMs = 0)
    {
        if (run.IsBegun(section)) return run.IsDry(section) ? ([], null) : Dated(run, nowMs, [new(new What.SectionDry(section, run.Sections[section].Person), BackMs: backMs)]);
        var at = nowMs - backMs;
        var marks = new List<ToMark>();
        marks.AddRange(AssumedMixes(run, section, person, at, nowMs));
        if (marks.Count > 0 && Refused(run) is { } refusal) return ([], refusal);
        var mixed = run.Batches.Select(b => b.Batch).Concat(marks.Select(m => ((What.BatchMixed)m.What).Batch)).ToHashSet(StringComparer.Ordinal);
        var drawn = Forecasting.Of(run, PaceSeen.Of(run), nowMs, run.Turns).Sections.ToDictionary(s => s.Section.Id, s => s.Batch, StringComparer.Ordinal);

        var before = Forecasting.Ahead(run, run.Turns).TakeWhile(t => t.Section != section).Where(t => t.Person == person).Select(t => run.SectionOf(t.Section)).ToList();
        var open = run.Sections.Values.Where(s => s.Person == person && s.DryAtMs is null).OrderBy(s => s.WetAtMs).LastOrDefault();
        var from = Math.Min(at, Math.Max(open?.WetAtMs ?? 0, LastMarkOf(run, person, at)));
        var planned = before.Sum(s => s.TimeOf(person)) + (open is null ? 0 : run.SectionOf(open.Section).TimeOf(person));
        // The plan's times, drawn together or apart so that they fill the time that really passed.
        var scale = planned > 0 ? (double)(at - from) / planned : 0;
        var clock = (double)from;
        if (open is not null) Dry(open.Section, run.SectionOf(open.Section).TimeOf(person));
        foreach (var missed in before)
        {
            marks.Add(new ToMark(Wet(missed.Id), IsAssumed: true, Back(clock)));
            Dry(missed.Id, missed.TimeOf(person));
        }

        marks.Add(new ToMark(Wet(section), BackMs: backMs));
        return Dated(run, nowMs, marks);

        What.SectionWet Wet(string id) => new(id, person, drawn.GetValueOrDefault(id) is { } batch && mixed.Contains(batch) ? batch : null);

        void Dry(string id, long takes)
        {
            clock += takes * scale;
            marks.Add(new ToMark(new What.SectionDry(id, person), IsAssumed: true, Back(clock)));
        }

        long Back(double ms) => Math.Max(0, nowMs - (long)ms);
    }

    /// <summary>Why nothing may be mixed yet; null: it may.</summary>
    public static Reason? Refused(Run run)
    {
        var hold = Holding.Of(run);
        if (hold.Never is [var never, ..])
            return new Reason("MixingHeld", Limit.Never, never.Say, v => Cure(never, v, v.Say("Nothing is mixed against this. Cure it, plan again, and begin a new run.", "Contra esto no se mezcla. Corríjalo, planifique otra vez y empiece otra aplicación.")));
        if (hold.AtYourWord is [var word, ..])
            return new Reason("WordMissing", Limit.AtYourWord, word.Say, v => Cure(word, v, v.Say("Cure it, or tap your reason for going on; it stays in the record.", "Corríjalo, o toque su motivo para seguir; queda en el registro.")));
        return hold.Unchecked is not [var point, ..] || run.HasBegun ? null
            : new Reason("NotPrepared", Limit.AtYourWord, v => v.Say($"Not seen to yet: {point.Text(v)}.", $"Falta comprobar: {point.Text(v)}."), v => v.Say("Tick it off in the preparation first.", "Márquelo antes en la preparación."));
    }

    private static string Cure(IssuedReason reason, Voice v, string step) => reason.Remedy(v) is { } remedy ? remedy + " " + step : step;

    /// <summary>A section cannot be wet from a batch that was never mixed, nor before what its roller mixes ahead of it: the plan's times before it are assumed.</summary>
    private static IReadOnlyList<ToMark> AssumedMixes(Run run, string section, int person, long at, long nowMs)
    {
        var ahead = Forecasting.Ahead(run, run.Turns);
        var turn = ahead.FirstOrDefault(t => t.Section == section);
        var own = turn?.Batch is { Length: > 0 } named ? named : run.Plan.Batches is [var first, ..] ? first.Id : null;
        var missing = ahead.TakeWhile(t => t.Section != section).Where(t => t.Person == person).Append(turn).SelectMany(t => t?.Mixes ?? []).Append(own).OfType<string>()
            .Distinct(StringComparer.Ordinal).Where(id => run.Batches.All(b => b.Batch != id)).ToList();
        // A later batch is assumed only where the plan says that this one is rolled from it; an extra one never.
        var earliest = run.Batches.Count > 0 ? run.Batches[^1].AtMs + 1 : long.MinValue;
        var last = Math.Min(at, Math.Max(earliest, Math.Min(at - run.Plan.MixMs, LastMarkOf(run, 0, at))));
        return [.. missing.Select((id, i) => new ToMark(
            new What.BatchMixed(id, run.Plan.Batches.FirstOrDefault(b => b.Id == id)?.MixedBy ?? 0), IsAssumed: true, Math.Max(0, nowMs - WhenMs(id, i))))];

        long WhenMs(string id, int place) => BegunAfterMs(run, id) is { } begun
            ? Math.Min(last, begun - run.Plan.MixMs)
            : Math.Max(Math.Min(earliest, last), last - ((missing.Count - 1 - place) * run.Plan.MixMs));
    }

    /// <summary>When the section was begun before which the order mixes a batch ahead: no later was it mixed. Null: none was.</summary>
    private static long? BegunAfterMs(Run run, string batch) =>
        run.Turns.FirstOrDefault(t => t.Mixes?.Contains(batch, StringComparer.Ordinal) == true) is { } turn ? run.Sections.GetValueOrDefault(turn.Section)?.WetAtMs : null;

    private static long LastMarkOf(Run run, int person, long at)
    {
        var times = run.Sections.Values.Where(s => s.Person == person).SelectMany(s => new[] { s.WetAtMs, s.DryAtMs ?? s.WetAtMs })
            .Concat(run.Batches.Where(b => b.Person == person).Select(b => Math.Min(at, b.AtMs + run.Plan.MixMs)))
            .Where(t => t <= at).ToList();
        return times.Count > 0 ? times.Max() : at;
    }
}
