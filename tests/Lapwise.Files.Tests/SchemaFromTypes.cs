using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using System.Xml.Linq;
using Lapwise.Core.Quantities;

namespace Lapwise.Files.Tests;

/// <summary>
/// The JSON Schema (draft 2020-12) of a document type: shape from the serializer's own contract, descriptions from the
/// documentation comments, so neither can drift from what is read. A property is required where leaving it out would
/// leave nothing: a blank quantity or name, an empty list, a zero, a whole part of the document.
/// </summary>
internal static class SchemaFromTypes
{
    public static string Write(JsonTypeInfo type, string id, string title)
    {
        var root = (JsonObject)JsonSchemaExporter.GetJsonSchemaAsNode(type, new JsonSchemaExporterOptions
        {
            TreatNullObliviousAsNonNullable = true,
            TransformSchemaNode = Describe,
        });
        root.Remove("description");
        root.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        root.Insert(1, "$id", id);
        root.Insert(2, "title", title);
        root.Insert(3, "description", Docs.Of("T:" + type.Type.FullName));
        return root.ToJsonString(Indented) + "\n";
    }

    private static readonly JsonSerializerOptions Indented = new(JsonSerializerOptions.Default)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private static JsonObject Describe(JsonSchemaExporterContext context, JsonNode node)
    {
        var type = context.TypeInfo.Type;
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        var schema = node as JsonObject ?? [];
        if (bare == typeof(Entry))
            schema["type"] = new JsonArray(["string", "number", .. bare != type ? ["null"] : Array.Empty<JsonNode>()]);
        if (context.TypeInfo.Kind == JsonTypeInfoKind.Object && Required(context.TypeInfo) is { Count: > 0 } required)
            schema["required"] = required;
        if (context.PropertyInfo is { } property)
        {
            if (property.Name == "lapwise") schema = new JsonObject { ["const"] = 1 };
            schema.Insert(0, "description", Docs.Of(Member(property)) + Docs.OfValues(bare));
        }
        return schema;
    }

    private static JsonArray Required(JsonTypeInfo type)
    {
        var blank = Activator.CreateInstance(type.Type)!;
        var nullability = new NullabilityInfoContext();
        return [.. type.Properties
            .Where(p => nullability.Create(Property(p)).ReadState == NullabilityState.NotNull && IsNothing(p.Get!(blank)))
            .Select(p => JsonValue.Create(p.Name))];
    }

    private static bool IsNothing(object? value) => value switch
    {
        Entry entry => entry.IsBlank,
        string text => text.Length == 0,
        System.Collections.ICollection list => list.Count == 0,
        Enum or bool or int => false,
        IConvertible number => number.ToDouble(CultureInfo.InvariantCulture) == 0,
        _ => true,
    };

    private static PropertyInfo Property(JsonPropertyInfo property) =>
        property.DeclaringType.GetProperty(property.Name, BindingFlags.Public | BindingFlags.Instance | BindingFlags.IgnoreCase)!;

    private static string Member(JsonPropertyInfo property) => $"P:{property.DeclaringType.FullName}.{Property(property).Name}";

    /// <summary>Documentation comments of the core.</summary>
    private static class Docs
    {
        private static readonly Dictionary<string, string> Members =
            XDocument.Load(Path.ChangeExtension(typeof(Entry).Assembly.Location, ".xml")).Descendants("member")
                .Where(m => m.Element("summary") is not null)
                .ToDictionary(m => (string)m.Attribute("name")!, m => Flat(m.Element("summary")!), StringComparer.Ordinal);

        public static string Of(string member) =>
            Members.GetValueOrDefault(member) ?? throw new InvalidOperationException($"{member} has no summary; a person reads it in the schema.");

        /// <summary>The documented values of an enum, as <c> (open: …; wall: …)</c>.</summary>
        public static string OfValues(Type type)
        {
            if (!type.IsEnum) return "";
            var values = Enum.GetNames(type)
                .Select(name => (Name: JsonNamingPolicy.CamelCase.ConvertName(name), Text: Members.GetValueOrDefault($"F:{type.FullName}.{name}")))
                .Where(v => v.Text is not null)
                .Select(v => $"{v.Name}: {v.Text!.TrimEnd('.')}");
            var list = string.Join("; ", values);
            return list.Length == 0 ? "" : $" ({list})";
        }

        private static string Flat(XElement summary)
        {
            foreach (var reference in summary.Descendants("see").ToList())
                reference.ReplaceWith(((string?)reference.Attribute("cref") ?? "").Split('.', ':')[^1]);
            return string.Join(' ', summary.Value.Split([' ', '\r', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries));
        }
    }
}
