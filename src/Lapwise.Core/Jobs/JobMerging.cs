using System.Text.Json;
using System.Text.Json.Nodes;

namespace Lapwise.Core.Jobs;

/// <summary>Whose edit stands.</summary>
public enum Side { Mine, Other }

/// <summary>A part of a job that is merged as one: a top, a coat, a person, a reading of the room, the job's name.</summary>
/// <param name="Member">Member of the job document, as <c>tops</c> or <c>room</c>.</param>
/// <param name="Item">Which one of it: the name of a top, the product of a coat, the reading of a room; null: the whole member.</param>
public sealed record JobPlace(string Member, string? Item);

/// <summary>One value that differs between two edits of a place.</summary>
/// <param name="Path">Below the place, as <c>outline.length</c>; empty: the place itself.</param>
/// <param name="Mine">As written; null: not there.</param>
/// <param name="Other">As written; null: not there.</param>
public sealed record Difference(string Path, string? Mine, string? Other);

/// <summary>Two edits of one place, neither of which may be lost.</summary>
public sealed record JobClash(JobPlace Place, IReadOnlyList<Difference> Differences);

/// <summary>Both edits in one job; where they clash, <see cref="Job"/> holds mine until somebody chooses.</summary>
public sealed record MergedJob(JobDocument Job, IReadOnlyList<JobClash> Clashes);

/// <summary>
/// Two edits of one job made from the same version, merged by top and coat. What only one of them changed is taken;
/// what both changed alike is taken once; what both changed differently is a clash. A top is never mixed from two edits:
/// it would be a top that nobody measured. Rooms, tools and aims are merged by reading.
/// It works on the document's JSON, so a member that is new to the document is merged without a line here.
/// </summary>
public static class JobMerging
{
    /// <param name="from">The version both were made from.</param>
    /// <param name="mine">As edited here.</param>
    /// <param name="other">As edited elsewhere.</param>
    /// <param name="chosen">Clashes already decided.</param>
    public static MergedJob Merge(JobDocument from, JobDocument mine, JobDocument other, IReadOnlyDictionary<JobPlace, Side>? chosen = null)
    {
        var merge = new Pass(chosen ?? new Dictionary<JobPlace, Side>());
        var (was, here, there) = (Tree(from), Tree(mine), Tree(other));
        var job = new JsonObject();
        foreach (var member in Members(was, here, there))
        {
            if (merge.Member(member, was[member], here[member], there[member]) is { } value) job[member] = value;
        }

        return new MergedJob(job.Deserialize(JobJson.Default.JobDocument)!, merge.Clashes);
    }

    private static JsonObject Tree(JobDocument job) => JsonSerializer.SerializeToNode(job, JobJson.Default.JobDocument)!.AsObject();

    private static IEnumerable<string> Members(params JsonObject?[] objects) =>
        objects.SelectMany(o => o?.Select(m => m.Key) ?? []).Distinct(StringComparer.Ordinal);

    private static bool Same(JsonNode? a, JsonNode? b) => JsonNode.DeepEquals(a, b);

    /// <summary>One merge on its way, gathering its clashes.</summary>
    private sealed class Pass(IReadOnlyDictionary<JobPlace, Side> chosen)
    {
        private readonly List<JobClash> _clashes = [];

        public IReadOnlyList<JobClash> Clashes => _clashes;

        public JsonNode? Member(string name, JsonNode? was, JsonNode? mine, JsonNode? other)
        {
            JsonNode?[] all = [was, mine, other];
            if (all.Any(n => n is JsonObject) && all.All(n => n is null or JsonObject))
                return ByReading(name, was as JsonObject, mine as JsonObject, other as JsonObject);
            if (all.Any(n => n is JsonArray { Count: > 0 }) && all.All(n => n is null || (n is JsonArray list && list.All(i => i is JsonObject))))
                return ByItem(name, was as JsonArray, mine as JsonArray, other as JsonArray);
            return One(new JobPlace(name, null), was, mine, other);
        }

        private JsonNode? One(JobPlace place, JsonNode? was, JsonNode? mine, JsonNode? other)
        {
            if (Same(mine, other) || Same(other, was)) return mine?.DeepClone();
            if (Same(mine, was)) return other?.DeepClone();
            if (chosen.TryGetValue(place, out var side)) return (side == Side.Mine ? mine : other)?.DeepClone();
            _clashes.Add(new JobClash(place, [.. Differing("", mine, other)]));
            return mine?.DeepClone();
        }

        private JsonObject? ByReading(string name, JsonObject? was, JsonObject? mine, JsonObject? other)
        {
            var merged = new JsonObject();
            foreach (var reading in Members(was, mine, other))
            {
                if (One(new JobPlace(name, reading), was?[reading], mine?[reading], other?[reading]) is { } value) merged[reading] = value;
            }

            return merged.Count == 0 && (mine is null || other is null) ? null : merged;
        }

        private JsonArray? ByItem(string name, JsonArray? was, JsonArray? mine, JsonArray? other)
        {
            var before = Keyed.Of(was);
            var (here, there) = (Keyed.Of(mine).PairedWith(before), Keyed.Of(other).PairedWith(before));
            var (mineMoved, otherMoved) = (here.Moved(before), there.Moved(before));
            // Order means something: two new orders of one list cannot both stand.
            if (mineMoved && otherMoved && here.Moved(there)) return One(new JobPlace(name, null), was, mine, other)?.AsArray();

            var merged = new JsonArray();
            foreach (var key in otherMoved ? there.Order(here) : here.Order(there))
            {
                if (One(new JobPlace(name, key), before[key], here[key], there[key]) is { } item) merged.Add(item);
            }

            return merged.Count == 0 && (mine is null || other is null) ? null : merged;
        }
    }

    /// <summary>The items of a list by what they are called; two of one name are told apart by their turn.</summary>
    private sealed class Keyed
    {
        private static readonly string[] CalledBy = ["id", "name", "product"];
        private readonly List<(string Key, JsonNode Item)> _items = [];

        public JsonNode? this[string key] => _items.FirstOrDefault(i => i.Key == key).Item;

        private IEnumerable<string> Keys => _items.Select(i => i.Key);

        public static Keyed Of(JsonArray? list)
        {
            var keyed = new Keyed();
            var seen = new Dictionary<string, int>(StringComparer.Ordinal);
            foreach (var item in list ?? [])
            {
                var called = CalledBy.Select(m => item![m] is JsonValue v && v.TryGetValue<string>(out var text) ? text : null).FirstOrDefault(t => t is not null) ?? "";
                var turn = seen[called] = seen.GetValueOrDefault(called) + 1;
                keyed._items.Add((turn == 1 ? called : $"{called} ({turn})", item!));
            }

            return keyed;
        }

        /// <summary>An item under a new name, standing where an item of the old name is gone, is that item renamed.</summary>
        public Keyed PairedWith(Keyed before)
        {
            var paired = new Keyed();
            var (now, then) = (Keys.ToHashSet(StringComparer.Ordinal), before.Keys.ToHashSet(StringComparer.Ordinal));
            foreach (var (i, (key, item)) in _items.Index())
            {
                var renamed = !then.Contains(key) && i < before._items.Count && !now.Contains(before._items[i].Key);
                paired._items.Add((renamed ? before._items[i].Key : key, item));
            }

            return paired;
        }

        /// <summary>Whether the items both lists hold stand in another order.</summary>
        public bool Moved(Keyed than)
        {
            var both = Keys.Intersect(than.Keys, StringComparer.Ordinal).ToHashSet(StringComparer.Ordinal);
            return !Keys.Where(both.Contains).SequenceEqual(than.Keys.Where(both.Contains), StringComparer.Ordinal);
        }

        /// <summary>This list's order, with what only the other holds put behind what it follows there.</summary>
        public IReadOnlyList<string> Order(Keyed other)
        {
            var order = Keys.ToList();
            var behind = -1;
            foreach (var key in other.Keys)
            {
                var at = order.IndexOf(key);
                if (at < 0) order.Insert(at = behind + 1, key);
                behind = at;
            }

            return order;
        }
    }

    internal static IEnumerable<Difference> Differing(string path, JsonNode? mine, JsonNode? other)
    {
        if (Same(mine, other)) return [];
        return (mine, other) switch
        {
            (JsonObject a, JsonObject b) => Members(a, b).SelectMany(m => Differing(path.Length == 0 ? m : path + "." + m, a[m], b[m])),
            (JsonArray a, JsonArray b) when a.Count == b.Count => a.SelectMany((_, i) => Differing($"{path}[{i}]", a[i], b[i])),
            _ => [new Difference(path, Written(mine), Written(other))],
        };
    }

    private static string? Written(JsonNode? node) => node switch
    {
        null => null,
        JsonValue value when value.TryGetValue<string>(out var text) => text,
        JsonObject or JsonArray => string.Join(", ", Leaves(node)),
        _ => node.ToJsonString(),
    };

    private static IEnumerable<string> Leaves(JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(m => Leaves(m.Value)),
        JsonArray items => items.SelectMany(Leaves),
        null => [],
        _ => [Written(node)!],
    };
}
