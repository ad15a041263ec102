using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>Sends what is only on this device, job by job and then the photos, without its page being open.</summary>
internal sealed class Synchronising(Server server, Drafts drafts, JobCopies copies, Photos photos, Removals removals)
{
    private readonly Dictionary<string, Kept> standing = new(StringComparer.Ordinal);
    private bool isRunning;

    /// <summary>How a job was left that could not simply be sent: a clash to choose in, or a refusal.</summary>
    public Kept Standing(string id) => standing.GetValueOrDefault(id, Kept.OnDevice);

    /// <summary>Goes through every draft once; stops where the server does not answer.</summary>
    public async Task Run()
    {
        if (isRunning) return;
        isRunning = true;
        await removals.Send();
        var removed = removals.All.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var (id, _) in await drafts.All())
        {
            // What is taken out is not sent first.
            if (removed.Contains(id)) continue;
            if (await KeptJob.Here(id, server, drafts, copies) is not { Kept: Kept.Sending } job) continue;
            using (job)
            {
                await job.Meet();
                standing[id] = job.Kept;
                if (job.Kept is Kept.OnDevice or Kept.Nowhere) break;
            }
        }

        await photos.Send();
        isRunning = false;
    }

    /// <summary>A copy of a job as a file's text: from this device, or as the server has it.</summary>
    public async Task<string?> TextOf(string id) =>
        await drafts.TakeUp(id) is { } draft ? JobFile.Write(draft.Job)
        : await copies.Of(id) is { } copy ? JobFile.Write(copy.Job)
        : await drafts.UnreadableText(id);
}
