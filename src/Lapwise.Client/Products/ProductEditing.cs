using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Client.Products;

/// <summary>
/// A product as it is being typed: the document, changed value by value at the paths that faults name. A blank value is left
/// out of the document, and so is what holds nothing any more. A number that is none yet stays as typed, beside its fault.
/// </summary>
/// <param name="isKnown">Says every fault from the start; false: of a new product only what was touched, until somebody asks for all.</param>
internal sealed class ProductEditing(ProductDocument start, bool isKnown)
{
    private bool saysAll = isKnown;
    private readonly HashSet<string> touched = new(StringComparer.Ordinal);
    private readonly JsonObject tree = JsonSerializer.SerializeToNode(start, JobJson.Default.ProductDocument)!.AsObject();
    private readonly Dictionary<string, string> notNumbers = new(StringComparer.Ordinal);

    public ProductDocument Document { get; private set; } = start;

    public IReadOnlyList<Fault> Faults { get; private set; } = FaultsOf(start);

    public bool CanBeKept => Faults.Count == 0 && notNumbers.Count == 0;

    /// <summary>From now on every fault is said; gives the place of the first, or null.</summary>
    public string? SayAll()
    {
        saysAll = true;
        return notNumbers.Keys.FirstOrDefault() ?? (Faults is [var first, ..] ? first.Path : null);
    }

    /// <summary>Whether a group has something in it, or must have.</summary>
    public bool IsWanted(ProductGroup group) => group.Repeats is { } list
        ? CountAt(list) > 0 || Faults.Any(f => f.Path.StartsWith(list, StringComparison.Ordinal))
        : group.Fields.Any(f => f.Entry is ProductEntry.AnyOf || TextAt(f.Path).Length > 0 || Faults.Any(x => x.Path == f.Path));

    public IEnumerable<string> FaultsAt(string path, Voice voice) => notNumbers.ContainsKey(path)
        ? [voice.Say("This is not a number.", "Esto no es un número.")]
        : Faults.Where(f => f.Path == path && (saysAll || touched.Contains(path))).Select(f => $"{f.Text(voice)} {f.Cure(voice)}");

    /// <summary>Faults that no field of the group shows: of a list or of two fields together.</summary>
    public IEnumerable<string> FaultsBeside(IReadOnlyCollection<string> paths, IReadOnlyCollection<string> owners, Voice voice) =>
        Faults.Where(f => saysAll && owners.Contains(f.Path) && !paths.Contains(f.Path)).Select(f => $"{f.Text(voice)} {f.Cure(voice)}");

    public string TextAt(string path) => notNumbers.TryGetValue(path, out var typed) ? typed : At(path) switch
    {
        null => "",
        JsonArray list => string.Join("; ", list.Select(i => i!.GetValue<string>())),
        JsonValue value when value.TryGetValue<string>(out var text) => text,
        var other => other.ToJsonString(),
    };

    public IReadOnlyList<string> ManyAt(string path) => At(path) is JsonArray list ? [.. list.Select(i => i!.GetValue<string>())] : [];

    public int CountAt(string list) => At(list) is JsonArray items ? items.Count : 0;

    public void Set(ProductField field, string path, string typed)
    {
        notNumbers.Remove(path);
        touched.Add(path);
        JsonNode? value = typed.Trim().Length == 0 ? null : field.Entry switch
        {
            ProductEntry.Number => NumberIn(path, typed),
            ProductEntry.YesNo => JsonValue.Create(typed == "true"),
            ProductEntry.Quantities => new JsonArray([.. typed.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(t => (JsonNode)JsonValue.Create(t))]),
            _ => JsonValue.Create(typed),
        };
        Put(path, value);
    }

    public void Mark(string path, string written, bool isMarked)
    {
        var now = ManyAt(path).Where(w => w != written);
        Put(path, new JsonArray([.. (isMarked ? now.Append(written) : now).Select(w => (JsonNode)JsonValue.Create(w))]));
    }

    public void AddTo(string list)
    {
        if (At(list) is JsonArray items) items.Add(new JsonObject());
        else tree[list] = new JsonArray(new JsonObject());
        Read();
    }

    public void TakeOut(string list, int index)
    {
        var items = At(list)!.AsArray();
        items.RemoveAt(index);
        foreach (var stale in notNumbers.Keys.Where(k => k.StartsWith(list + "[", StringComparison.Ordinal)).ToList()) notNumbers.Remove(stale);
        if (items.Count == 0) tree.Remove(list);
        Read();
    }

    private JsonValue? NumberIn(string path, string typed)
    {
        if (decimal.TryParse(typed.Trim().Replace(',', '.'), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) return JsonValue.Create(number);
        notNumbers[path] = typed;
        return null;
    }

    private void Put(string path, JsonNode? value)
    {
        Put(tree, Steps(path), value);
        Read();
    }

    private static void Put(JsonObject at, ReadOnlySpan<string> steps, JsonNode? value)
    {
        var name = steps[0];
        if (steps.Length == 1)
        {
            if (value is null) at.Remove(name);
            else at[name] = value;
        }
        else if (at[name] is JsonArray items)
        {
            Put(items[int.Parse(steps[1], CultureInfo.InvariantCulture)]!.AsObject(), steps[2..], value);
        }
        else
        {
            var inner = at[name] as JsonObject;
            if (inner is null) at[name] = inner = [];
            Put(inner, steps[1..], value);
            if (inner.Count == 0) at.Remove(name);
        }
    }

    private JsonNode? At(string path)
    {
        JsonNode? at = tree;
        foreach (var step in Steps(path))
        {
            at = at is JsonArray items ? items[int.Parse(step, CultureInfo.InvariantCulture)] : at?[step];
            if (at is null) return null;
        }

        return at;
    }

    private static string[] Steps(string path) => path.Replace("[", ".", StringComparison.Ordinal).Replace("]", "", StringComparison.Ordinal).Split('.');

    private void Read()
    {
        Document = tree.Deserialize(JobJson.Default.ProductDocument)!;
        Faults = FaultsOf(Document);
    }

    private static IReadOnlyList<Fault> FaultsOf(ProductDocument document) => ProductReading.Read(document, "").Faults;
}
