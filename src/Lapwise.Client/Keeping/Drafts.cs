using System.Globalization;
using System.Text.Json;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Keeping;

/// <summary>A job as typed here and not yet on the server.</summary>
/// <param name="From">Version it was made from; null: the server has never had it.</param>
internal sealed record Draft(JobDocument Job, long? From);

/// <summary>Jobs kept on this device until the server has them.</summary>
internal static class Drafts
{
    private const string Prefix = "lapwise/draft/";

    /// <summary>First line the version it was made from, then the document.</summary>
    public static bool Keep(Device device, string id, Draft draft) =>
        device.Write(Prefix + id, (draft.From?.ToString(CultureInfo.InvariantCulture) ?? "new") + "\n" + JsonSerializer.Serialize(draft.Job, JobJson.Default.JobDocument));

    public static Draft? Of(Device device, string id)
    {
        if (device.Read(Prefix + id) is not { } kept || kept.IndexOf('\n', StringComparison.Ordinal) is not (> 0 and var line)) return null;
        try
        {
            var job = JsonSerializer.Deserialize(kept[(line + 1)..], JobJson.Default.JobDocument);
            return job is null ? null : new Draft(job, long.TryParse(kept[..line], NumberStyles.None, CultureInfo.InvariantCulture, out var from) ? from : null);
        }
        catch (JsonException)
        {
            // Written by another version of this page; it stays where it is for that version.
            return null;
        }
    }

    public static void Forget(Device device, string id) => device.Remove(Prefix + id);

    public static IEnumerable<string> Ids(Device device) => device.Keys(Prefix).Select(k => k[Prefix.Length..]);
}
