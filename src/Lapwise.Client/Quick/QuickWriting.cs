using System.Text.Json;
using Lapwise.Client.Keeping;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Quick;

namespace Lapwise.Client.Quick;

/// <summary>What was written for one quick sum, kept on this device as typed.</summary>
/// <param name="Units">What a number without a unit means here: the units of the page when the first field was written.</param>
internal sealed record QuickWriting(UnitSystem Units, IReadOnlyDictionary<string, string> Written)
{
    private const string Prefix = "lapwise/quick/";

    public static QuickWriting Blank(UnitSystem units) => new(units, new Dictionary<string, string>(StringComparer.Ordinal));

    public string this[string field] => Written.GetValueOrDefault(field) ?? "";

    /// <summary>A blank field is left out; a sheet that was blank takes the page's units.</summary>
    public QuickWriting With(string field, string text, UnitSystem now)
    {
        var written = new Dictionary<string, string>(Written, StringComparer.Ordinal);
        if (text.Length == 0) written.Remove(field);
        else written[field] = text;
        return new QuickWriting(Written.Count == 0 ? now : Units, written);
    }

    public void Keep(Device device, string sum)
    {
        if (Written.Count == 0) device.Remove(Prefix + sum);
        else device.Write(Prefix + sum, Units + "\n" + JsonSerializer.Serialize(new Dictionary<string, string>(Written, StringComparer.Ordinal), QuickJson.Default.DictionaryStringString));
    }

    public static QuickWriting Kept(Device device, string sum, UnitSystem now)
    {
        if (device.Read(Prefix + sum) is not { } kept || kept.IndexOf('\n', StringComparison.Ordinal) is not (> 0 and var line)) return Blank(now);
        try
        {
            return JsonSerializer.Deserialize(kept[(line + 1)..], QuickJson.Default.DictionaryStringString) is { } written && Enum.TryParse<UnitSystem>(kept[..line], out var units)
                ? new QuickWriting(units, written)
                : Blank(now);
        }
        catch (JsonException)
        {
            return Blank(now);
        }
    }

    /// <summary>The address at which a sum opens with what is written.</summary>
    /// <param name="back">The page it was come from, as <c>jobs/demo/conditions</c>; null: none.</param>
    public static string Address(QuickSum sum, IReadOnlyDictionary<string, string> written, string? back)
    {
        var query = sum.Fields.Where(f => written.ContainsKey(f.Name)).Select(f => (f.Name, Text: written[f.Name])).Concat(back is null ? [] : [(Name: BackName, Text: back)]);
        return $"quick/{sum.Name}?{string.Join('&', query.Select(q => $"{q.Name}={Uri.EscapeDataString(q.Text)}"))}";
    }

    /// <summary>The page of a job that an address leads back to; null: it was not come from one.</summary>
    public static string? BackIn(string address) =>
        Query(address).FirstOrDefault(q => q.Name == BackName).Text is { } back && back.Split('/') is ["jobs", { Length: > 0 }, { Length: > 0 } route] && Core.Phases.All.Any(p => p.Route == route) ? back : null;

    private const string BackName = "back";

    /// <summary>What an address asks for, as <c>?time=11+min&amp;at=73+°F</c>; null where it asks for nothing.</summary>
    public static QuickWriting? InAddress(QuickSum sum, string address, UnitSystem now)
    {
        var written = Query(address).Where(q => sum.Fields.Any(f => f.Name == q.Name)).DistinctBy(q => q.Name).ToDictionary(q => q.Name, q => q.Text, StringComparer.Ordinal);
        return written.Count == 0 ? null : new QuickWriting(now, written);
    }

    private static IEnumerable<(string Name, string Text)> Query(string address)
    {
        foreach (var pair in new Uri(address).Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries))
        {
            var equals = pair.IndexOf('=', StringComparison.Ordinal);
            if (equals > 0) yield return (Read(pair[..equals]), Read(pair[(equals + 1)..]));
        }

        static string Read(string text) => Uri.UnescapeDataString(text.Replace('+', ' '));
    }
}
