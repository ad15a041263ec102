using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

/// <summary>
/// What was changed in an open job, back and forth without limit. A document is never written over, so a step costs only
/// what it changed. Typing into one field is one step.
/// </summary>
internal sealed class Edits
{
    private sealed record Edit(JobDocument Before, JobDocument After, string? Field);

    private readonly Stack<Edit> done = new();
    private readonly Stack<Edit> undone = new();

    public bool CanUndo => done.Count > 0;
    public bool CanRedo => undone.Count > 0;

    /// <param name="field">The field that was typed into; null: a button, a choice, a drag.</param>
    public void Note(JobDocument before, JobDocument after, string? field)
    {
        undone.Clear();
        var typesOn = field is not null && done.TryPeek(out var last) && last.Field == field && ReferenceEquals(last.After, before);
        done.Push(typesOn ? done.Pop() with { After = after } : new Edit(before, after, field));
    }

    /// <summary>The document without the last change; null: there is none.</summary>
    public JobDocument? Undo(JobDocument now)
    {
        if (!done.TryPop(out var edit)) return null;
        undone.Push(edit);
        return Turned(edit.After, edit.Before, now);
    }

    /// <summary>The document with the change that was undone last; null: there is none.</summary>
    public JobDocument? Redo(JobDocument now)
    {
        if (!undone.TryPop(out var edit)) return null;
        done.Push(edit);
        return Turned(edit.Before, edit.After, now);
    }

    /// <summary>What somebody else changed meanwhile stays: only this step is turned.</summary>
    private static JobDocument Turned(JobDocument from, JobDocument to, JobDocument now) =>
        ReferenceEquals(from, now) ? to : JobMerging.Merge(from, to, now).Job;
}
