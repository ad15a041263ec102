using System.Globalization;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>A job taken out here that the shop's computer still has.</summary>
internal sealed record Removal(string Id, long Version, string Name);

/// <summary>
/// Jobs taken out while the server did not answer: kept here until it has heard of it. Until then a removal is taken back by
/// forgetting it; a job that was changed elsewhere meanwhile is not taken out.
/// </summary>
internal sealed class Removals(Device device, Server server, Drafts drafts, JobCopies copies)
{
    private const string Prefix = "lapwise/removed/";

    /// <summary>Names of jobs that were changed elsewhere before their removal arrived; they are there again.</summary>
    public IReadOnlyList<string> CameBack { get; private set; } = [];

    public IReadOnlyList<Removal> All =>
    [
        .. device.Keys(Prefix).Select(key => (Id: key[Prefix.Length..], Texts: device.Read(key)?.Split('\n', 2)))
            .Where(r => r.Texts is [_, _])
            .Select(r => new Removal(r.Id, long.Parse(r.Texts![0], CultureInfo.InvariantCulture), r.Texts[1]))
            .OrderBy(r => r.Name, StringComparer.CurrentCulture),
    ];

    /// <summary>False where this device keeps nothing: then it is not taken out.</summary>
    public bool Note(Removal removal) => device.Write(Prefix + removal.Id, removal.Version.ToString(CultureInfo.InvariantCulture) + "\n" + removal.Name);

    public void TakeBack(string id) => device.Remove(Prefix + id);

    /// <summary>Tells the server; stops where it does not answer.</summary>
    public async Task Send()
    {
        var back = new List<string>();
        foreach (var removal in All)
        {
            var reply = await server.Remove(removal.Id, removal.Version);
            if (reply is Reply<JobDocument>.Unreachable or Reply<JobDocument>.NotLetIn) break;
            TakeBack(removal.Id);
            if (reply is Reply<JobDocument>.Clash) back.Add(removal.Name);
            else
            {
                await copies.Forget(removal.Id);
                await drafts.DropAll(removal.Id);
            }
        }

        if (back.Count > 0) CameBack = back;
    }
}
