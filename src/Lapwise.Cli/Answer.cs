using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace Lapwise.Cli;

/// <summary>Prints an answer as JSON: UTF-8, letters as they are.</summary>
internal static class Answer
{
    public static void Json<T>(this Terminal terminal, T answer, JsonTypeInfo<T> shape)
    {
        var options = new JsonSerializerOptions(shape.Options) { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };
        terminal.Out.WriteLine(JsonSerializer.Serialize(answer, (JsonTypeInfo<T>)options.GetTypeInfo(typeof(T))));
    }
}
