using Lapwise.Client.Keeping;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Jobs;

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
    /// <summary>On this device; somebody else saved the same job in between.</summary>
    Clash,
    /// <summary>The browser keeps nothing and the server does not answer.</summary>
    Nowhere,
}

/// <summary>
/// One job open in the page: the document as typed, what the core makes of it, and where it is kept.
/// Every change is kept on this device at once and sent to the server a moment later.
/// </summary>
internal sealed class OpenJob : IDisposable
{
    private static readonly TimeSpan BeforeSending = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan BeforeTryingAgain = TimeSpan.FromSeconds(3);

    private readonly Server server;
    private readonly Device device;
    private CancellationTokenSource sending = new();
    private bool isSending;
    private long? version;
    private bool keptHere = true;

    public OpenJob(string id, JobDocument document, long? version, Server server, Device device, Coatings coatings)
    {
        (Id, Document, this.version, this.server, this.device) = (id, document, version, server, device);
        Workings = new Workings(() => Document, () => coatings.All);
        Workings.Changed += () => Changed?.Invoke();
    }

    public string Id { get; }
    public JobDocument Document { get; private set; }
    public Workings Workings { get; }
    public Kept Kept { get; private set; } = Kept.Saved;
    /// <summary>Why the server refused, in its words.</summary>
    public string Refusal { get; private set; } = "";
    /// <summary>What somebody else saved in between, while <see cref="Kept"/> is <see cref="Kept.Clash"/>.</summary>
    public (JobDocument Job, long Version)? Other { get; private set; }

    public event Action? Changed;

    public void Change(Func<JobDocument, JobDocument> change)
    {
        Document = change(Document);
        keptHere = Drafts.Keep(device, Id, new Draft(Document, version));
        if (Kept != Kept.Clash) Kept = Kept.Sending;
        Workings.Refresh();
        Changed?.Invoke();
        if (Kept != Kept.Clash) _ = SendAfter(BeforeSending);
    }

    /// <summary>Sends what is only here, now.</summary>
    public void SendNow()
    {
        if (Kept is Kept.Sending or Kept.OnDevice or Kept.Nowhere) _ = SendAfter(TimeSpan.Zero);
    }

    public IEnumerable<Fault> FaultsAt(string path) => Workings.Faults.Where(f => f.Path == path);

    public IEnumerable<Fault> FaultsUnder(string path) =>
        Workings.Faults.Where(f => f.Path == path || f.Path.StartsWith(path + ".", StringComparison.Ordinal) || f.Path.StartsWith(path + "[", StringComparison.Ordinal));

    /// <summary>Ends a clash with what is typed here; the other one is put in as a copy, so both are kept.</summary>
    public async Task KeepMine(Func<string, string> copyName)
    {
        if (Other is not var (job, at)) return;
        await server.Save(NewId(), job with { Name = copyName(job.Name) }, from: null);
        version = at;
        EndClash();
        _ = SendAfter(TimeSpan.Zero);
    }

    /// <summary>Ends a clash with the other one; what was typed here is put in as a copy, so both are kept.</summary>
    public async Task TakeOther(Func<string, string> copyName)
    {
        if (Other is not var (job, at)) return;
        var copy = NewId();
        var mine = Document with { Name = copyName(Document.Name) };
        // The copy is first kept here: the server may be gone again.
        Drafts.Keep(device, copy, new Draft(mine, null));
        if (await server.Save(copy, mine, from: null) is Reply<JobDocument>.Got) Drafts.Forget(device, copy);
        (Document, version) = (job, at);
        Drafts.Forget(device, Id);
        EndClash();
        Kept = Kept.Saved;
        Workings.Refresh();
        Changed?.Invoke();
    }

    /// <summary>A clash found on opening: here is a draft from an older version than the server's.</summary>
    public void MarkClash(JobDocument other, long otherVersion)
    {
        (Kept, Other) = (Kept.Clash, (other, otherVersion));
        Changed?.Invoke();
    }

    public void Dispose()
    {
        sending.Cancel();
        sending.Dispose();
        Workings.Dispose();
    }

    public static string NewId() => Guid.CreateVersion7().ToString("N");

    private void EndClash() => (Kept, Other) = (Kept.Sending, null);

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
            case Reply<JobDocument>.Got(_, var saved):
                version = saved;
                if (ReferenceEquals(sent, Document))
                {
                    Drafts.Forget(device, Id);
                    Kept = Kept.Saved;
                }
                else
                {
                    // Typed on while it was on its way: the draft now stands on the new version.
                    Drafts.Keep(device, Id, new Draft(Document, version));
                    _ = SendAfter(BeforeSending);
                }
                break;
            case Reply<JobDocument>.Clash or Reply<JobDocument>.Missing:
                await MeetOther();
                break;
            case Reply<JobDocument>.Refused(var problem):
                (Kept, Refusal) = (Kept.Refused, problem.Detail ?? problem.Title ?? "");
                break;
            default:
                Kept = keptHere ? Kept.OnDevice : Kept.Nowhere;
                _ = SendAfter(BeforeTryingAgain);
                break;
        }
        Changed?.Invoke();
    }

    private async Task MeetOther()
    {
        switch (await server.Job(Id))
        {
            // The answer to an earlier save was lost on the way: the server already has what is here.
            case Reply<JobDocument>.Got(var other, var at) when Same(other, Document):
                version = at;
                Drafts.Forget(device, Id);
                Kept = Kept.Saved;
                break;
            case Reply<JobDocument>.Got(var other, var at):
                (Kept, Other) = (Kept.Clash, (other, at));
                break;
            case Reply<JobDocument>.Missing:
                // Taken out elsewhere while it was open here: what is typed here goes in again.
                version = null;
                _ = SendAfter(TimeSpan.Zero);
                break;
            default:
                Kept = Kept.OnDevice;
                _ = SendAfter(BeforeTryingAgain);
                break;
        }
    }

    private static bool Same(JobDocument a, JobDocument b) => Json(a) == Json(b);

    private static string Json(JobDocument job) => System.Text.Json.JsonSerializer.Serialize(job, JobJson.Default.JobDocument);
}
