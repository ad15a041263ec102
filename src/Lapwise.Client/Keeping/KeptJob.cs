using Lapwise.Core.Jobs;
using Lapwise.Wire;

namespace Lapwise.Client.Keeping;

/// <summary>Where what was typed is kept by now.</summary>
internal enum Kept
{
    Saved,
    /// <summary>On this device; on its way to the server.</summary>
    Sending,
    /// <summary>On this device; the server does not answer.</summary>
    OnDevice,
    /// <summary>On this device; the server refused it.</summary>
    Refused,
    /// <summary>On this device; somebody else changed the same place of the job differently.</summary>
    Clash,
    /// <summary>On this device; the shop's computer does not let this device in.</summary>
    NotLetIn,
    /// <summary>The browser keeps nothing and the server does not answer.</summary>
    Nowhere,
}

/// <summary>
/// One job on this device and its way to the server. Every change is kept here at once and sent a moment later; what others
/// changed meanwhile is merged in by top and coat, and where both changed the same, both are kept until somebody chooses.
/// </summary>
internal sealed class KeptJob(string id, Server server, Drafts drafts, JobCopies copies) : IDisposable
{
    private static readonly TimeSpan BeforeSending = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromSeconds(3);
    private static readonly JobDocument Nothing = new();

    private readonly Dictionary<JobPlace, Side> chosen = [];
    private CancellationTokenSource sending = new();
    private bool isSending;
    private long? version;
    private JobDocument? before;
    private JobDocument? takenUp;
    private (JobDocument Job, long Version)? other;
    private Task<Shelved> shelving = Task.FromResult(Shelved.Kept);

    public string Id => id;
    public JobDocument Document { get; private set; } = Nothing;
    public Kept Kept { get; private set; } = Kept.Saved;
    /// <summary>Why the server refused, in its words.</summary>
    public string Refusal { get; private set; } = "";
    /// <summary>What waits for a choice while <see cref="Kept"/> is <see cref="Kept.Clash"/>.</summary>
    public IReadOnlyList<JobClash> Clashes { get; private set; } = [];
    /// <summary>What another tab of this device typed into this job is put together with it as soon as the server answers.</summary>
    public bool HasMore { get; private set; }
    /// <summary>How keeping on this device went last.</summary>
    public Shelved Shelved { get; private set; }

    /// <summary>Anything but the document.</summary>
    public event Action? Changed;
    /// <summary>The document, by somebody else's edit or a choice.</summary>
    public event Action? DocumentChanged;

    /// <summary>Opens what this device has, at once; null: it has nothing of this job.</summary>
    public static async Task<KeptJob?> Here(string id, Server server, Drafts drafts, JobCopies copies)
    {
        var draft = await drafts.TakeUp(id);
        var copy = draft is null ? await copies.Of(id) : null;
        if (draft is null && copy is null) return null;
        var kept = new KeptJob(id, server, drafts, copies);
        (kept.Document, kept.version, kept.before) = draft is null ? (copy!.Value.Job, copy.Value.Version, copy.Value.Job) : (draft.Job, draft.From, draft.Base);
        if (draft is not null) (kept.Kept, kept.takenUp) = (Kept.Sending, draft.Job);
        return kept;
    }

    /// <summary>A job just read from the server.</summary>
    public static async Task<KeptJob> Read(string id, JobDocument job, long version, Server server, Drafts drafts, JobCopies copies)
    {
        await copies.Keep(id, job, version);
        return new KeptJob(id, server, drafts, copies) { Document = job, version = version, before = job };
    }

    /// <summary>What was typed just now.</summary>
    public void Change(JobDocument document)
    {
        Document = document;
        if (Kept == Kept.Clash) Merge();
        else Kept = Kept.Sending;
        Shelve();
        Changed?.Invoke();
        if (Kept != Kept.Clash) _ = SendAfter(BeforeSending);
    }

    /// <summary>The storage of this device was emptied: what is open is kept again.</summary>
    public void KeepAgain()
    {
        if (Kept != Kept.Saved) Shelve();
        else if (version is { } at) _ = copies.Keep(Id, Document, at);
    }

    /// <summary>Sends what is only here, and looks whether the server has something newer.</summary>
    public async Task Meet()
    {
        if (Kept is Kept.Sending or Kept.OnDevice or Kept.Nowhere or Kept.Refused or Kept.NotLetIn) await SendAfter(TimeSpan.Zero);
        else await LookForNewer();
    }

    /// <summary>Decides one clash.</summary>
    public void Choose(JobPlace place, Side side)
    {
        chosen[place] = side;
        Merge();
        DocumentChanged?.Invoke();
        Changed?.Invoke();
        if (Kept != Kept.Clash) _ = SendAfter(TimeSpan.Zero);
    }

    public void Dispose()
    {
        sending.Cancel();
        sending.Dispose();
    }

    /// <summary>Keeps it here, in turn: a later keystroke is never overtaken by an earlier one.</summary>
    private void Shelve()
    {
        var now = drafts.Keep(Id, new Draft(Document, version, before));
        shelving = now;
        _ = Note(now);

        async Task Note(Task<Shelved> keeping)
        {
            var went = await keeping;
            if (went == Shelved) return;
            Shelved = went;
            Changed?.Invoke();
        }
    }

    private async Task SendAfter(TimeSpan wait)
    {
        await sending.CancelAsync();
        sending.Dispose();
        sending = new CancellationTokenSource();
        var stop = sending.Token;
        try
        {
            if (wait > TimeSpan.Zero) await Task.Delay(wait, stop);
        }
        catch (OperationCanceledException)
        {
            return;
        }
        if (!isSending) await Send();
    }

    private async Task Send()
    {
        isSending = true;
        var sent = Document;
        var reply = await server.Save(Id, sent, version);
        isSending = false;
        switch (reply)
        {
            case Reply<JobDocument>.Got(_, var saved): await Stand(sent, saved); break;
            case Reply<JobDocument>.Clash or Reply<JobDocument>.Missing: await MeetOther(); break;
            case Reply<JobDocument>.NotLetIn: Kept = Kept.NotLetIn; break;
            case Reply<JobDocument>.Refused(var problem): (Kept, Refusal) = (Kept.Refused, problem.Detail ?? problem.Title ?? ""); break;
            default: await Unanswered(); break;
        }
        Changed?.Invoke();
    }

    private async Task Unanswered()
    {
        // Tried each time: the browser may have cleared it without a word, or have room again.
        if (Shelved != Shelved.Kept || !await drafts.Has(Id)) Shelve();
        Kept = await shelving == Shelved.Kept ? Kept.OnDevice : Kept.Nowhere;
        HasMore = await drafts.HasMore(Id);
        _ = SendAfter(BeforeTryingAgain);
    }

    /// <summary>The server now holds <paramref name="job"/> at <paramref name="at"/>.</summary>
    private async Task Stand(JobDocument job, long at)
    {
        (version, before, other) = (at, job, null);
        chosen.Clear();
        var isCopied = await copies.Keep(Id, job, at) == Shelved.Kept;
        if (!ReferenceEquals(job, Document))
        {
            // Typed on while it was on its way: the draft now stands on the new version.
            Kept = Kept.Sending;
            Shelve();
            _ = SendAfter(BeforeSending);
            return;
        }

        (Kept, HasMore) = (Kept.Saved, false);
        // Where there is no room for the copy, the draft is the latest that this device has.
        if (isCopied) await drafts.Forget(Id);
        await TakeInWhatWasLeft(job, at);
    }

    /// <summary>What a closed tab left of this job comes next, unless somebody types here.</summary>
    private async Task TakeInWhatWasLeft(JobDocument stored, long at)
    {
        if (await drafts.Left(Id) is not var (key, left) || Kept != Kept.Saved) return;
        (Document, version, before, other) = (left.Job, left.From, left.Base, (stored, at));
        Merge();
        Shelve();
        DocumentChanged?.Invoke();
        if (await shelving == Shelved.Kept) await drafts.Drop(key);
        if (Kept != Kept.Clash) await Send();
    }

    private async Task MeetOther()
    {
        switch (await server.Job(Id))
        {
            // The answer to an earlier save was lost on the way: the server already has what is here.
            case Reply<JobDocument>.Got(var stored, var at) when Same(stored, Document):
                await Stand(Document, at);
                break;
            case Reply<JobDocument>.Got(var stored, var at):
                // The list of jobs had sent the draft before it was typed on here: nobody else changed anything.
                if (before is null && takenUp is { } begun && Same(stored, begun)) before = stored;
                other = (stored, at);
                Merge();
                Shelve();
                DocumentChanged?.Invoke();
                if (Kept != Kept.Clash) await Send();
                break;
            case Reply<JobDocument>.Missing:
                // Taken out elsewhere while it was open here: what is typed here goes in again.
                (version, before) = (null, null);
                await Send();
                break;
            default:
                await Unanswered();
                break;
        }
    }

    /// <summary>Puts the other edit together with what is typed here.</summary>
    private void Merge()
    {
        if (other is not var (stored, at)) return;
        var merged = JobMerging.Merge(before ?? Nothing, Document, stored, chosen);
        (Document, Clashes) = (merged.Job, merged.Clashes);
        Kept = Clashes.Count > 0 ? Kept.Clash : Kept.Sending;
        if (Kept == Kept.Clash) return;
        (version, before, other) = (at, stored, null);
        chosen.Clear();
        Shelve();
    }

    private async Task LookForNewer()
    {
        if (Kept != Kept.Saved || await server.Job(Id) is not Reply<JobDocument>.Got(var stored, var at) || Kept != Kept.Saved) return;
        if (at == version)
        {
            await TakeInWhatWasLeft(stored, at);
            return;
        }

        (Document, version, before) = (stored, at, stored);
        await copies.Keep(Id, stored, at);
        DocumentChanged?.Invoke();
        Changed?.Invoke();
    }

    private static bool Same(JobDocument a, JobDocument b) => JobFile.Write(a) == JobFile.Write(b);
}
