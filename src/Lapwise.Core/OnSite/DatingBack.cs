using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>How far back a mark can be dated: nothing is done before it was begun, and nobody goes on before what they did last.</summary>
internal static class DatingBack
{
    /// <summary>Why these marks cannot have happened when they say; null: they can.</summary>
    public static Reason? Refused(Run run, long nowMs, IReadOnlyList<ToMark> marks) => marks
        .Where(m => m is { IsAssumed: false, BackMs: > 0 })
        .Select(m => LastBefore(run, m.What) is { } limit && nowMs - m.BackMs < limit.AtMs ? TooEarly(run, nowMs, m, limit) : null)
        .FirstOrDefault(r => r is not null);

    private static Reason TooEarly(Run run, long nowMs, ToMark mark, LoggedMark limit) => new(
        "BeforeItsBeginning", Limit.Never,
        v => v.Say($"Not marked: {Voice.Span(mark.BackMs / 1000)} ago is too early. Before it comes what was marked {Voice.Span((nowMs - limit.AtMs) / 1000)} ago: “{MarkWords.Of(limit, run, v)}”",
            $"No se marcó: hace {Voice.Span(mark.BackMs / 1000)} es demasiado pronto. Antes está lo marcado hace {Voice.Span((nowMs - limit.AtMs) / 1000)}: «{MarkWords.Of(limit, run, v)}»"),
        v => v.Say("Choose a later time; or, if that earlier mark is the wrong one, undo it first.", "Elija un momento posterior; o, si la equivocada es esa marca anterior, deshágala primero."));

    /// <summary>The latest mark that must have come before; null: there is none.</summary>
    private static LoggedMark? LastBefore(Run run, What what) =>
        run.Log.Where(l => l.Counts && ComesBefore(run, l.Mark.What, what) && IsTakenFrom(run, l)).MaxBy(l => l.AtMs);

    private static bool ComesBefore(Run run, What earlier, What what) => (what, earlier) switch
    {
        (What.SectionDry dry, What.SectionWet wet) => wet.Section == dry.Section,
        (What.SectionDry, _) => false,
        (What.SectionWet wet, What.BatchMixed mixed) => mixed.Person == wet.Person || mixed.Batch == BatchOf(run, wet),
        (What.SectionWet wet, _) => PersonOf(earlier) == wet.Person,
        (What.BatchMixed mixed, _) => PersonOf(earlier) == mixed.Person,
        (What.StepDone step, What.SectionWet wet) => IsWith(run, step.Step, wet.Section, fromBegun: true),
        (What.StepDone step, What.SectionDry dry) => IsWith(run, step.Step, dry.Section, fromBegun: false),
        (What.Paused, _) => earlier is What.Resumed || PersonOf(earlier) is not null,
        (What.Resumed, _) => earlier is What.Paused,
        _ => false,
    };

    /// <summary>Of several marks of one thing, the one whose time the run goes by.</summary>
    private static bool IsTakenFrom(Run run, LoggedMark logged) => logged.Mark.What switch
    {
        What.SectionWet w => run.Sections.GetValueOrDefault(w.Section)?.WetAtMs == logged.AtMs,
        What.SectionDry w => run.Sections.GetValueOrDefault(w.Section)?.DryAtMs == logged.AtMs,
        What.BatchMixed w => run.Batches.Any(b => b.Batch == w.Batch && b.AtMs == logged.AtMs),
        _ => true,
    };

    private static int? PersonOf(What what) => what switch
    {
        What.SectionWet w => w.Person,
        What.SectionDry w => w.Person,
        What.BatchMixed w => w.Person,
        _ => null,
    };

    /// <summary>The batch a section is rolled from; where that is not mixed, the first there was.</summary>
    private static string? BatchOf(Run run, What.SectionWet wet)
    {
        var named = wet.Batch ?? run.Turns.FirstOrDefault(t => t.Section == wet.Section)?.Batch;
        return run.Batches.Any(b => b.Batch == named) ? named : run.Batches is [var first, ..] ? first.Batch : null;
    }

    private static bool IsWith(Run run, string step, string section, bool fromBegun) =>
        run.Plan.Steps.FirstOrDefault(s => s.Id == step) is { } known && known.With.Contains(section) && (known.FromBegun == true) == fromBegun;
}
