using System.Globalization;
using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>A job as typed here and not yet on the server.</summary>
/// <param name="From">Version it was made from; null: the server has never had it.</param>
/// <param name="Base">The job as it stood at that version, to merge by; null as above.</param>
internal sealed record Draft(JobDocument Job, long? From, JobDocument? Base);

/// <summary>
/// Jobs kept on this device until the server has them. Every tab has a record of its own for a job, so that two tabs without
/// reception do not write over each other; what a closed tab left is taken up by the next that opens the job.
/// </summary>
internal sealed class Drafts(Cupboard cupboard)
{
    public async Task<Shelved> Keep(string id, Draft draft) => await cupboard.Write(Drawer.Drafts, await OwnKey(id),
        draft.From?.ToString(CultureInfo.InvariantCulture) ?? "new", draft.Job.Name, Write(draft.Job), draft.Base is null ? "" : Write(draft.Base));

    /// <summary>Whether this tab's record of a job is there.</summary>
    public async Task<bool> Has(string id) => await cupboard.Read(Drawer.Drafts, await OwnKey(id)) is not null;

    public async Task Forget(string id) => await cupboard.Remove(Drawer.Drafts, await OwnKey(id));

    /// <summary>What this tab kept of a job before a reload; else what a tab left that is no longer open, as this tab's own from now on.</summary>
    public async Task<Draft?> TakeUp(string id)
    {
        if (await cupboard.Read(Drawer.Drafts, await OwnKey(id)) is { } kept)
        {
            if (Read(kept) is { } own) return own;
            // Written by another version of this page, it is not written over.
            if (await cupboard.Write(Drawer.Drafts, $"{id}/of-another-version-{Guid.NewGuid():N}", kept) == Shelved.Kept) await Forget(id);
        }

        if (await Left(id) is not var (key, left)) return null;
        if (await Keep(id, left) == Shelved.Kept) await cupboard.Remove(Drawer.Drafts, key);
        return left;
    }

    /// <summary>What a tab left of a job that is no longer open; it stays there until <see cref="Drop"/>.</summary>
    public async Task<(string Key, Draft Draft)?> Left(string id)
    {
        var (own, open) = (await OwnKey(id), await cupboard.OpenTabs());
        foreach (var key in (await cupboard.Heads(Drawer.Drafts, 0)).Select(h => h[0]))
        {
            if (key == own || IdIn(key) != id || open.Contains(key[(id.Length + 1)..], StringComparer.Ordinal)) continue;
            if (Read(await cupboard.Read(Drawer.Drafts, key)) is { } draft) return (key, draft);
        }

        return null;
    }

    /// <summary>Every record of a job, of any tab.</summary>
    public async Task DropAll(string id)
    {
        foreach (var key in (await cupboard.Heads(Drawer.Drafts, 0)).Select(h => h[0]).Where(k => IdIn(k) == id)) await cupboard.Remove(Drawer.Drafts, key);
    }

    public Task Drop(string key) => cupboard.Remove(Drawer.Drafts, key);

    /// <summary>Whether another tab, closed or open, also keeps something of this job.</summary>
    public async Task<bool> HasMore(string id)
    {
        var own = await OwnKey(id);
        return (await cupboard.Heads(Drawer.Drafts, 0)).Any(h => h[0] != own && IdIn(h[0]) == id);
    }

    /// <summary>Jobs kept here, each once, with its name.</summary>
    public async Task<IReadOnlyList<(string Id, string Name)>> All() =>
        [.. (await cupboard.Heads(Drawer.Drafts, 2)).Where(h => h.Length == 3).Select(h => (IdIn(h[0]), h[2])).DistinctBy(d => d.Item1)];

    /// <summary>The text of a draft that this page cannot read, written by another version of it; it stays where it is.</summary>
    public async Task<string?> UnreadableText(string id)
    {
        foreach (var head in await cupboard.Heads(Drawer.Drafts, 0))
        {
            if (IdIn(head[0]) == id && await cupboard.Read(Drawer.Drafts, head[0]) is { Length: > 2 } texts && Read(texts) is null) return texts[2];
        }

        return null;
    }

    private async Task<string> OwnKey(string id) => id + "/" + await cupboard.Tab();

    private static string IdIn(string key) => key[..key.IndexOf('/', StringComparison.Ordinal)];

    private static Draft? Read(string[]? texts)
    {
        if (texts is not [var from, _, var job, var was]) return null;
        try
        {
            return new Draft(JobOf(job)!, long.TryParse(from, NumberStyles.None, CultureInfo.InvariantCulture, out var version) ? version : null, was.Length == 0 ? null : JobOf(was));
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Write(JobDocument job) => JsonSerializer.Serialize(job, JobJson.Default.JobDocument);

    private static JobDocument? JobOf(string json) => JsonSerializer.Deserialize(json, JobJson.Default.JobDocument);
}
