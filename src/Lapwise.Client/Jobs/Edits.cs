using System.Text.Json;
using Lapwise.Client.Keeping;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

/// <summary>
/// What was changed in an open job, back and forth without limit. A document is never written over, so a step costs only
/// what it changed. Typing into one field is one step. Steps are kept on this device as far as its storage goes, and are there
/// again after a reload.
/// </summary>
internal sealed class Edits(string job, EditKeeping keeping) : IDisposable
{
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromSeconds(3);

    private sealed record Edit(Lazy<JobDocument?> Before, Lazy<JobDocument?> After, string? Field);

    private readonly List<Edit> steps = [];
    private readonly Turns turns = new();
    private int done;
    /// <summary>How many of the first steps lie on this device as they stand here, and how many of them are said to be done.</summary>
    private (int Steps, int Done) kept;
    private bool isTakenUp;
    private bool isKeeping;
    private bool isClosed;

    public bool CanUndo => done > 0;
    public bool CanRedo => done < steps.Count;
    /// <summary>False: the latest steps are in this page alone.</summary>
    public bool IsKept { get; private set; } = true;

    public event Action? Changed;

    /// <summary>The steps that were made before the page was loaded anew; none where something was changed here already.</summary>
    public async Task TakeUp()
    {
        var left = await keeping.Read(job);
        if (isTakenUp || steps.Count > 0) return;
        isTakenUp = true;
        foreach (var step in left.Steps.Where(s => s.Length == 3))
        {
            // Read only when it is wanted: there may be thousands.
            var before = step[1].Length > 0 || steps.Count == 0 ? new Lazy<JobDocument?>(() => Read(step[1])) : steps[^1].After;
            steps.Add(new Edit(before, new Lazy<JobDocument?>(() => Read(step[2])), step[0].Length > 0 ? step[0] : null));
        }

        done = Math.Clamp(left.Count, 0, steps.Count);
        kept = (steps.Count, done);
        if (steps.Count > 0) Changed?.Invoke();
    }

    /// <param name="field">The field that was typed into; null: a button, a choice, a drag.</param>
    public void Note(JobDocument before, JobDocument after, string? field)
    {
        isTakenUp = true;
        steps.RemoveRange(done, steps.Count - done);
        var typesOn = field is not null && steps is [.., var last] && last.Field == field && last.After is { IsValueCreated: true, Value: { } left } && ReferenceEquals(left, before);
        var edit = new Edit(typesOn ? steps[^1].Before : Is(before), Is(after), field);
        if (typesOn) steps[^1] = edit;
        else steps.Add(edit);
        done = steps.Count;
        kept = kept with { Steps = Math.Min(kept.Steps, done - 1) };
        Changed?.Invoke();
        _ = Keep();
    }

    /// <summary>The document without the last change; null: there is none.</summary>
    public JobDocument? Undo(JobDocument now)
    {
        if (!CanUndo) return null;
        var edit = steps[--done];
        _ = Keep();
        return Turned(edit.After.Value, edit.Before.Value, now);
    }

    /// <summary>The document with the change that was undone last; null: there is none.</summary>
    public JobDocument? Redo(JobDocument now)
    {
        if (!CanRedo) return null;
        var edit = steps[done++];
        _ = Keep();
        return Turned(edit.Before.Value, edit.After.Value, now);
    }

    /// <summary>What somebody else changed meanwhile stays: only this step is turned.</summary>
    private static JobDocument Turned(JobDocument? from, JobDocument? to, JobDocument now) =>
        from is null || to is null ? now : ReferenceEquals(from, now) ? to : JobMerging.Merge(from, to, now).Job;

    /// <summary>Writes what is not on this device yet, when the key or tap that made it has been drawn; tried again where there is no room.</summary>
    private async Task Keep()
    {
        if (isKeeping) return;
        isKeeping = true;
        await turns.Take();
        while (!isClosed && kept != (steps.Count, done))
        {
            var (from, going) = (kept.Steps, (steps.Count, done));
            kept = going;
            var went = await keeping.Put(job, from, [.. Enumerable.Range(from, steps.Count - from).Select(Written)], done);
            if (!went) kept = (Math.Min(kept.Steps, from), -1);
            if (went != IsKept)
            {
                IsKept = went;
                Changed?.Invoke();
            }

            if (went) await turns.Take();
            else await Task.Delay(BeforeTryingAgain);
        }

        isKeeping = false;
    }

    /// <summary>A step as field, document before and document after; before is "" where it is what the step before it left.</summary>
    private string[] Written(int place)
    {
        var (before, after, field) = steps[place];
        var goesOn = place > 0 && steps[place - 1].After is { IsValueCreated: true, Value: { } earlier } && ReferenceEquals(earlier, before.Value);
        return [field ?? "", goesOn ? "" : Write(before.Value), Write(after.Value)];
    }

    public void Dispose() => isClosed = true;

    private static Lazy<JobDocument?> Is(JobDocument document) => new(document);

    private static string Write(JobDocument? document) => document is null ? "" : JsonSerializer.Serialize(document, JobJson.Default.JobDocument);

    private static JobDocument? Read(string text)
    {
        try
        {
            return text.Length == 0 ? null : JsonSerializer.Deserialize(text, JobJson.Default.JobDocument);
        }
        catch (JsonException)
        {
            // Left by another version of the page: that step turns nothing.
            return null;
        }
    }
}
