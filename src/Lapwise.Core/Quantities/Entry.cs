using System.Text.Json;
using System.Text.Json.Serialization;

namespace Lapwise.Core.Quantities;

/// <summary>
/// A quantity exactly as a person wrote it: <c>96 1/2 in</c>, <c>8' 4-1/4"</c>, <c>2450 mm</c>, <c>78 °F</c>.
/// It is kept as written, so nothing entered is lost; the readers turn it into a number or a reason.
/// A bare number in a file is the same entry without a unit.
/// </summary>
[JsonConverter(typeof(EntryConverter))]
public readonly record struct Entry(string Text)
{
    public bool IsBlank => string.IsNullOrWhiteSpace(Text);
    public override string ToString() => Text ?? "";
    public static implicit operator Entry(string text) => new(text);
}

/// <summary>Reads text or a bare number; always writes text.</summary>
public sealed class EntryConverter : JsonConverter<Entry>
{
    public override Entry Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.TokenType switch
    {
        JsonTokenType.String => new Entry(reader.GetString()!),
        JsonTokenType.Number => new Entry(System.Text.Encoding.UTF8.GetString(reader.ValueSpan)),
        _ => throw new JsonException("a quantity is text such as \"96 1/2 in\", or a number"),
    };

    public override void Write(Utf8JsonWriter writer, Entry value, JsonSerializerOptions options) => writer.WriteStringValue(value.Text);
}
