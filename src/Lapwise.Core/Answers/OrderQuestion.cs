using System.Text.Json;
using Lapwise.Core.Explain;
using Lapwise.Core.Work.Order;

namespace Lapwise.Core.Answers;

/// <summary>
/// Reads the bare section graph that the order command and the API take:
/// <c>{ "crew": 1, "sections": [ { "id", "seconds": number or one for each person, "notBeforeS"?, "startedAtS"? } ],
/// "laps": [ ["a", "b"] or { "a", "b", "limitS"? } ], "before": [ ["a", "b"] ] }</c>.
/// </summary>
public static class OrderQuestion
{
    /// <summary>The problem in whole milliseconds, or every fault with its place.</summary>
    public static (OrderProblem? Problem, IReadOnlyList<Fault> Faults) Read(string json)
    {
        try
        {
            using var document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 8, AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            return new Reader().Read(document.RootElement);
        }
        catch (JsonException slip)
        {
            return (null, [new Fault("", "JsonNotUnderstood",
                v => v.Say("This is not JSON from here on.", "Desde aquí no es JSON."),
                v => v.Say("Check the brackets, commas and quotes near this line.", "Revise los corchetes, las comas y las comillas cerca de esta línea."))
                { Line = slip.LineNumber is { } line ? (int)line + 1 : null }]);
        }
    }

    private sealed class Reader
    {
        private readonly List<Fault> faults = [];
        private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);

        public (OrderProblem?, IReadOnlyList<Fault>) Read(JsonElement root)
        {
            if (root.ValueKind != JsonValueKind.Object)
            {
                Refuse("", v => v.Say("A section graph is an object with sections and laps.", "Un grafo de secciones es un objeto con sections y laps."));
                return (null, faults);
            }

            Known(root, "", "crew", "sections", "laps", "before");
            var sections = Each(root, "sections", Section);
            var laps = Each(root, "laps", Lap);
            var before = Each(root, "before", (pair, path) => Pair(pair, path) is var (first, then) ? (first, then) : default);
            var crew = root.TryGetProperty("crew", out var given) ? (int)Math.Round(Number(given, "crew")) : 1;
            var problem = new OrderProblem(sections, laps, before, crew);
            // What could not be read is already told at its own place.
            IReadOnlyList<Fault> found = [.. faults, .. OrderCheck.Faults(problem).Where(f => !faults.Exists(told => told.Path.StartsWith(f.Path, StringComparison.Ordinal)))];
            return (found.Count == 0 ? problem : null, found);
        }

        private OrderSection Section(JsonElement section, string path)
        {
            if (section.ValueKind != JsonValueKind.Object)
            {
                Refuse(path, v => v.Say("A section is an object with id and seconds.", "Una sección es un objeto con id y seconds."));
                return new OrderSection("", []);
            }

            Known(section, path, "id", "seconds", "notBeforeS", "startedAtS");
            var id = section.TryGetProperty("id", out var name) ? Id(name) : "";
            if (id.Length == 0) Refuse(path + ".id", v => v.Say("A section needs an id.", "Una sección necesita un id."));
            else if (!ids.TryAdd(id, ids.Count)) Refuse(path + ".id", v => v.Say($"Two sections are called {id}.", $"Dos secciones se llaman {id}."));

            long[] durations = !section.TryGetProperty("seconds", out var seconds) ? []
                : seconds.ValueKind == JsonValueKind.Array ? [.. seconds.EnumerateArray().Select((s, i) => Milliseconds(s, $"{path}.seconds[{i}]"))]
                : [Milliseconds(seconds, path + ".seconds")];
            return new OrderSection(id, durations,
                Given(section, "notBeforeS") is { } notBefore ? Milliseconds(notBefore, path + ".notBeforeS") : 0,
                Given(section, "startedAtS") is { } startedAt ? Milliseconds(startedAt, path + ".startedAtS") : null);
        }

        private OrderLap Lap(JsonElement lap, string path)
        {
            if (lap.ValueKind != JsonValueKind.Object) return Pair(lap, path) is var (x, y) ? new OrderLap(x, y) : new OrderLap(-1, -1);
            Known(lap, path, "a", "b", "limitS");
            return new OrderLap(
                End(lap, "a", path),
                End(lap, "b", path),
                Given(lap, "limitS") is { } limit ? Milliseconds(limit, path + ".limitS") : null);
        }

        private (int, int)? Pair(JsonElement pair, string path)
        {
            if (pair.ValueKind == JsonValueKind.Array && pair.GetArrayLength() == 2) return (Index(pair[0], path + "[0]"), Index(pair[1], path + "[1]"));
            Refuse(path, v => v.Say("A pair is two ids in a list.", "Una pareja son dos id en una lista."));
            return null;
        }

        private int End(JsonElement lap, string name, string path)
        {
            if (Given(lap, name) is { } id) return Index(id, $"{path}.{name}");
            Refuse($"{path}.{name}", v => v.Say($"A lap needs {name}.", $"Un solape necesita {name}."));
            return -1;
        }

        private int Index(JsonElement id, string path)
        {
            var text = Id(id);
            if (ids.TryGetValue(text, out var index)) return index;
            Refuse(path, v => v.Say($"No section is called \"{text}\".", $"Ninguna sección se llama «{text}»."));
            return -1;
        }

        /// <summary>An id is text; a whole number is taken as its digits.</summary>
        private static string Id(JsonElement id) => id.ValueKind switch
        {
            JsonValueKind.String => id.GetString()!,
            JsonValueKind.Number => id.GetRawText(),
            _ => "",
        };

        private long Milliseconds(JsonElement seconds, string path)
        {
            var ms = Math.Round(Number(seconds, path) * 1000);
            if (Math.Abs(ms) < 1e15) return (long)ms;
            Refuse(path, v => v.Say("This is no time a person could wait.", "Nadie podría esperar tanto tiempo."));
            return 0;
        }

        private double Number(JsonElement number, string path)
        {
            if (number.ValueKind == JsonValueKind.Number && number.TryGetDouble(out var value)) return Math.Clamp(value, -1e300, 1e300);
            Refuse(path, v => v.Say("A number is needed here.", "Aquí hace falta un número."));
            return 0;
        }

        private List<T> Each<T>(JsonElement root, string name, Func<JsonElement, string, T> read)
        {
            if (Given(root, name) is not { } list) return [];
            if (list.ValueKind == JsonValueKind.Array) return [.. list.EnumerateArray().Select((item, i) => read(item, $"{name}[{i}]"))];
            Refuse(name, v => v.Say("A list is needed here.", "Aquí hace falta una lista."));
            return [];
        }

        private static JsonElement? Given(JsonElement parent, string name) =>
            parent.TryGetProperty(name, out var value) && value.ValueKind != JsonValueKind.Null ? value : null;

        private void Known(JsonElement parent, string path, params ReadOnlySpan<string> names)
        {
            foreach (var property in parent.EnumerateObject())
            {
                if (names.Contains(property.Name)) continue;
                var name = property.Name;
                Refuse(path.Length == 0 ? name : $"{path}.{name}", v => v.Say($"\"{name}\" is not known here.", $"«{name}» no se conoce aquí."));
            }
        }

        private void Refuse(string path, Phrase text) => faults.Add(new Fault(path, "GraphNotUnderstood", text,
            v => v.Say("See `lapwise help order` for the shape.", "Vea la forma con `lapwise help order`.")));
    }
}
