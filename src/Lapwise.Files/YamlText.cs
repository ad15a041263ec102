using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Lapwise.Files;

/// <summary>
/// YAML to JSON and back. The JSON keeps each value on the line it has in the YAML, so the line that the JSON reader
/// names is the line the person sees; no second map of lines is needed.
/// </summary>
public static partial class YamlText
{
    /// <summary>Most values after every alias is written out: a file that grows beyond it was made to.</summary>
    public const int MostValues = 100_000;

    /// <summary>
    /// Turns one YAML document into JSON, line for line. A plain scalar that is a JSON number, <c>true</c>, <c>false</c>
    /// or null becomes that; everything else, as <c>96 1/2 in</c> or <c>007</c>, stays text.
    /// </summary>
    public static YamlRead ToJson(string yaml)
    {
        try
        {
            return new YamlRead(new LineKeeper(yaml).Json(), null);
        }
        catch (Refusal refusal)
        {
            return new YamlRead(null, refusal.Fault);
        }
        catch (Exception slip) when (slip is YamlException or InvalidOperationException or ArgumentException) // the parser lets the second out on an unclosed bracket, the third on a tag that is no address
        {
            return new YamlRead(null, new Fault("", "YamlNotUnderstood",
                v => v.Say("This is not YAML from here on.", "Desde aquí no es YAML."),
                v => v.Say("Check the indentation, colons and quotes near this line.", "Revise la sangría, los dos puntos y las comillas cerca de esta línea."))
            { Line = slip is YamlException { Start.Line: var line } ? (int)line : null });
        }
    }

    /// <summary>Writes JSON as YAML. Text that a reader would take for a number or a word of YAML is quoted.</summary>
    public static string FromJson(JsonElement json)
    {
        var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        var emitter = new Emitter(text, new EmitterSettings().WithBestWidth(int.MaxValue).WithNewLine("\n"));
        emitter.Emit(new StreamStart());
        emitter.Emit(new DocumentStart(null, null, isImplicit: true));
        Emit(emitter, json);
        emitter.Emit(new DocumentEnd(isImplicit: true));
        emitter.Emit(new StreamEnd());
        return text.ToString();
    }

    private static void Emit(Emitter emitter, JsonElement json)
    {
        switch (json.ValueKind)
        {
            case JsonValueKind.Object:
                emitter.Emit(new MappingStart(AnchorName.Empty, TagName.Empty, isImplicit: true, MappingStyle.Block));
                foreach (var property in json.EnumerateObject())
                {
                    emitter.Emit(Text(property.Name));
                    Emit(emitter, property.Value);
                }
                emitter.Emit(new MappingEnd());
                break;
            case JsonValueKind.Array:
                emitter.Emit(new SequenceStart(AnchorName.Empty, TagName.Empty, isImplicit: true, SequenceStyle.Block));
                foreach (var item in json.EnumerateArray()) Emit(emitter, item);
                emitter.Emit(new SequenceEnd());
                break;
            case JsonValueKind.String:
                emitter.Emit(Text(json.GetString()!));
                break;
            default:
                emitter.Emit(new Scalar(json.GetRawText()));
                break;
        }
    }

    // The parser takes a plain key with a star after a space for an alias.
    private static Scalar Text(string text) =>
        IsWordOfJson(text) || text.Any(char.IsControl) || text.Contains(" *", StringComparison.Ordinal)
            ? new Scalar(AnchorName.Empty, TagName.Empty, text, ScalarStyle.DoubleQuoted, isPlainImplicit: false, isQuotedImplicit: true)
            : new Scalar(text);

    /// <summary>What a plain scalar stands for in JSON, or null where it is text.</summary>
    private static string? WordOfJson(string plain) => plain switch
    {
        "" or "~" or "null" => "null",
        "true" or "false" => plain,
        _ => JsonNumber().IsMatch(plain) ? plain : null,
    };

    private static bool IsWordOfJson(string text) => WordOfJson(text) is not null;

    [GeneratedRegex(@"\A-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?\z", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex JsonNumber();

    private sealed class Refusal(Fault fault) : Exception
    {
        public Fault Fault => fault;
    }

    /// <summary>Writes the events of one YAML document as JSON, each value on its own line of the YAML.</summary>
    private sealed class LineKeeper
    {
        private readonly List<ParsingEvent> events = [];
        private readonly Dictionary<AnchorName, int> anchors = [];
        private readonly StringBuilder json = new();
        private long line = 1;
        private int values;

        public LineKeeper(string yaml)
        {
            var parser = new Parser(new StringReader(yaml));
            var depth = 0;
            while (parser.MoveNext())
            {
                var next = parser.Current!;
                depth += next.NestingIncrease;
                if (depth > JobFile.DeepestNesting + 2) throw NestedTooDeep(next); // the stream and the document are levels too
                events.Add(next);
                if (events.Count > 2 * MostValues) throw TooManyValues(next);
            }
        }

        public string Json()
        {
            var at = 1; // after the start of the stream
            if (events[at] is StreamEnd) return "";
            at++;
            Write(ref at, 0);
            if (events[at + 1] is not StreamEnd)
                throw Refuse("MoreThanOneDocument", events[at + 1],
                    v => v.Say("The file holds more than one document.", "El archivo contiene más de un documento."),
                    v => v.Say("Keep one document in a file.", "Deje un solo documento en el archivo."));
            return json.ToString();
        }

        private void Write(ref int at, int depth)
        {
            var start = events[at++];
            if (++values > MostValues) throw TooManyValues(start);
            if (depth > JobFile.DeepestNesting) throw NestedTooDeep(start);
            if (start is AnchorAlias alias)
            {
                if (!anchors.TryGetValue(alias.Value, out var copy))
                    throw Refuse("AliasUnknown", start,
                        v => v.Say($"Nothing before this line is marked &{alias.Value}.", $"Nada antes de esta línea está marcado &{alias.Value}."),
                        v => v.Say("Mark the value it repeats, or write the value out.", "Marque el valor que repite, o escriba el valor."));
                Write(ref copy, depth + 1);
                return;
            }
            if (start is NodeEvent { Anchor.IsEmpty: false } anchored) anchors[anchored.Anchor] = at - 1;
            if (start is NodeEvent { Tag: { IsEmpty: false, IsNonSpecific: false } })
                throw Refuse("TagNotUsed", start,
                    v => v.Say("Tags (words that begin with !) are not used here.", "Aquí no se usan etiquetas (palabras que empiezan por !)."),
                    v => v.Say("Remove the tag.", "Quite la etiqueta."));
            KeepLine(start);
            switch (start)
            {
                case Scalar scalar:
                    json.Append(Value(scalar));
                    break;
                case SequenceStart:
                    json.Append('[');
                    for (var first = true; events[at] is not SequenceEnd; first = false)
                    {
                        if (!first) json.Append(',');
                        Write(ref at, depth + 1);
                    }
                    at++;
                    json.Append(']');
                    break;
                case MappingStart:
                    json.Append('{');
                    for (var first = true; events[at] is not MappingEnd; first = false)
                    {
                        if (!first) json.Append(',');
                        WriteKey(events[at++]);
                        Write(ref at, depth + 1);
                    }
                    at++;
                    json.Append('}');
                    break;
            }
        }

        private void WriteKey(ParsingEvent key)
        {
            if (key is not Scalar name)
                throw Refuse("KeyNotText", key,
                    v => v.Say("A name must be plain text here.", "Aquí el nombre debe ser texto simple."),
                    v => v.Say("Write name: value.", "Escriba nombre: valor."));
            KeepLine(key);
            json.Append(Quoted(name.Value)).Append(": ");
        }

        private void KeepLine(ParsingEvent next)
        {
            for (; line < next.Start.Line; line++) json.Append('\n');
        }

        private static string Value(Scalar scalar) =>
            (scalar.Style == ScalarStyle.Plain ? WordOfJson(scalar.Value) : null) ?? Quoted(scalar.Value);

        private static string Quoted(string text) => $"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";
    }

    private static Refusal NestedTooDeep(ParsingEvent at) => Refuse("NestedTooDeep", at,
        v => v.Say($"Nested deeper than {JobFile.DeepestNesting} levels.", $"Anidado a más de {JobFile.DeepestNesting} niveles."),
        v => v.Say("A document needs eight at most; look for a bracket that does not close.", "Un documento necesita ocho como mucho; busque un corchete sin cerrar."));

    private static Refusal TooManyValues(ParsingEvent at) => Refuse("TooManyValues", at,
        v => v.Say($"More than {MostValues} values once the aliases are written out.", $"Más de {MostValues} valores al desplegar los alias."),
        v => v.Say("Write the values out instead of nesting aliases.", "Escriba los valores en lugar de anidar alias."));

    private static Refusal Refuse(string code, ParsingEvent at, Phrase text, Phrase cure) =>
        new(new Fault("", code, text, cure) { Line = (int)at.Start.Line });
}

/// <param name="Json">JSON text with the lines of the YAML, or null with the fault.</param>
public sealed record YamlRead(string? Json, Fault? Fault);
