using System.Globalization;
using System.Text.Json;
using Lapwise.Core.Jobs;
using Lapwise.Wire;

namespace Lapwise.Client.Keeping;

/// <summary>The server's jobs as they were last seen, on this device, so that each opens without reception.</summary>
internal sealed class JobCopies(Cupboard cupboard, Server server, TimeProvider time)
{
    private Task following = Task.CompletedTask;

    public async Task<(JobDocument Job, long Version)?> Of(string id)
    {
        if (await cupboard.Read(Drawer.Jobs, id) is not [var version, _, _, var json]) return null;
        try
        {
            return (JsonSerializer.Deserialize(json, JobJson.Default.JobDocument)!, long.Parse(version, CultureInfo.InvariantCulture));
        }
        catch (JsonException)
        {
            // Kept by another version of this page.
            return null;
        }
    }

    public Task<Shelved> Keep(string id, JobDocument job, long version) => Keep(new JobLine(id, job.Name, version, time.GetUtcNow()), job);

    public Task Forget(string id) => cupboard.Remove(Drawer.Jobs, id);

    /// <summary>The list as it was last seen.</summary>
    public async Task<IReadOnlyList<JobLine>> Lines() =>
    [
        .. (await cupboard.Heads(Drawer.Jobs, 3))
            .Where(h => h.Length == 4)
            .Select(h => new JobLine(h[0], h[3], long.Parse(h[1], CultureInfo.InvariantCulture), DateTimeOffset.Parse(h[2], CultureInfo.InvariantCulture)))
            .OrderByDescending(l => l.ChangedAt),
    ];

    /// <summary>Fetches in the background whatever stands newer on the server, one at a time, and forgets what is gone there.</summary>
    public void Follow(IReadOnlyList<JobLine> stored)
    {
        if (following.IsCompleted) following = FollowAll(stored);
    }

    private async Task FollowAll(IReadOnlyList<JobLine> stored)
    {
        var here = (await Lines()).ToDictionary(l => l.Id, StringComparer.Ordinal);
        foreach (var gone in here.Keys.Except(stored.Select(s => s.Id), StringComparer.Ordinal)) await Forget(gone);
        foreach (var line in stored.Where(s => here.GetValueOrDefault(s.Id)?.Version != s.Version))
        {
            if (await server.Job(line.Id) is not Reply<JobDocument>.Got(var job, var version)) return;
            if (await Keep(line with { Version = version }, job) != Shelved.Kept) return;
        }
    }

    private Task<Shelved> Keep(JobLine line, JobDocument job) => cupboard.Write(Drawer.Jobs, line.Id,
        line.Version.ToString(CultureInfo.InvariantCulture), line.ChangedAt.ToString("O", CultureInfo.InvariantCulture), line.Name, JsonSerializer.Serialize(job, JobJson.Default.JobDocument));
}
