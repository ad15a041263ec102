using System.Collections.Frozen;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>
/// Holds JSON against the types it is to become, before it becomes them: the generated reader stops at the first fault
/// and speaks to programmers, this one says every fault with its path and line in the words of the document.
/// </summary>
internal sealed class JsonShape
{
    private const int MostFaults = 100;

    /// <summary>A file made to be hostile holds millions of values; a job holds a few thousand.</summary>
    private const int MostLines = 100_000;

    private readonly List<Fault> _faults = [];
    private readonly Dictionary<string, int> _lines = new(StringComparer.Ordinal);
    private long _countedTo;
    private int _line = 1;

    public IReadOnlyList<Fault> Faults => _faults;

    /// <summary>Line of each value, from 1, by its path.</summary>
    public IReadOnlyDictionary<string, int> Lines => _lines;

    /// <summary>The version the document says it has; null where it says none.</summary>
    public int? Version { get; private set; }

    public static JsonShape Check(ReadOnlySpan<byte> json, JsonTypeInfo type)
    {
        var shape = new JsonShape();
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = JobFile.DeepestNesting });
        try
        {
            reader.Read();
            shape.Value(ref reader, json, "", type.Type, mayBeNull: false);
            while (reader.Read()) { } // whatever follows the document is a fault
        }
        catch (Exception slip) when (slip is JsonException or InvalidOperationException) // the second: text that is no Unicode
        {
            var line = slip is JsonException { LineNumber: { } at } ? (int)at + 1 : shape.Line(reader.TokenStartIndex, json);
            // The reader counts a bracket only once it has gone past it.
            if (reader.CurrentDepth >= JobFile.DeepestNesting - 1) shape.NestedTooDeep(line);
            else if (json.Trim(" \t\r\n"u8).IsEmpty) shape.Empty();
            else if (json.TrimStart(" \t\r\n"u8)[0] is not ((byte)'{' or (byte)'[')) shape.OtherKindOfFile();
            else shape.NotJson(line);
        }

        return shape;
    }

    private void Value(ref Utf8JsonReader reader, ReadOnlySpan<byte> json, string path, Type type, bool mayBeNull)
    {
        var line = Line(reader.TokenStartIndex, json);
        if (_lines.Count < MostLines) _lines[path] = line;
        var plain = Nullable.GetUnderlyingType(type);
        if (reader.TokenType == JsonTokenType.Null)
        {
            if (!mayBeNull && plain is null) NothingThere(path, line);
            return;
        }

        type = plain ?? type;
        if (Words.TryGetValue(type, out var words)) Word(ref reader, path, line, words);
        else if (Wanted(type) is { } wanted) Scalar(ref reader, path, line, type, wanted);
        else Nested(ref reader, json, path, line, JobJson.Default.GetTypeInfo(type)!);
    }

    private void Nested(ref Utf8JsonReader reader, ReadOnlySpan<byte> json, string path, int line, JsonTypeInfo type)
    {
        var opens = type.Kind == JsonTypeInfoKind.Enumerable ? JsonTokenType.StartArray : JsonTokenType.StartObject;
        if (reader.TokenType != opens)
        {
            WrongKind(path, line, type.Kind == JsonTypeInfoKind.Enumerable ? Kinds.List : Kinds.Members);
            reader.Skip();
            return;
        }

        if (type.Kind == JsonTypeInfoKind.Enumerable) List(ref reader, json, path, type.ElementType!);
        else Members(ref reader, json, path, type);
    }

    private void List(ref Utf8JsonReader reader, ReadOnlySpan<byte> json, string path, Type of)
    {
        for (var i = 0; reader.Read() && reader.TokenType != JsonTokenType.EndArray; i++)
            Value(ref reader, json, $"{path}[{i}]", of, mayBeNull: false);
    }

    private void Members(ref Utf8JsonReader reader, ReadOnlySpan<byte> json, string path, JsonTypeInfo type)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var line = Line(reader.TokenStartIndex, json);
            var name = reader.GetString()!;
            var place = path.Length == 0 ? name : $"{path}.{name}";
            if (!seen.Add(name)) SaidTwice(place, line, name);

            reader.Read();
            if (path.Length == 0 && name == "lapwise" && reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out var version)) Version = version;
            if (type.Kind == JsonTypeInfoKind.Dictionary)
            {
                Value(ref reader, json, place, type.ElementType!, mayBeNull: false);
            }
            else if (type.Properties.FirstOrDefault(p => p.Name == name) is { } member)
            {
                Value(ref reader, json, place, member.PropertyType, member.IsSetNullable);
            }
            else
            {
                Unknown(place, line, name, [.. type.Properties.Select(p => p.Name)]);
                reader.Skip();
            }
        }
    }

    private void Scalar(ref Utf8JsonReader reader, string path, int line, Type type, Phrase wanted)
    {
        var fits = reader.TokenType switch
        {
            JsonTokenType.String => (type == typeof(string) || type == typeof(Entry)) && reader.GetString() is not null,
            JsonTokenType.Number =>
                type == typeof(Entry) || (type == typeof(int) && reader.TryGetInt32(out _)) ||
                (type == typeof(double) && reader.TryGetDouble(out _)) || (type == typeof(decimal) && reader.TryGetDecimal(out _)),
            JsonTokenType.True or JsonTokenType.False => type == typeof(bool),
            _ => false,
        };
        if (fits) return;
        WrongKind(path, line, wanted);
        reader.Skip();
    }

    private void Word(ref Utf8JsonReader reader, string path, int line, IReadOnlyList<string> words)
    {
        var said = reader.TokenType == JsonTokenType.String ? reader.GetString()! : "";
        if (words.Contains(said)) return;
        Add(path, line, "WordUnknown",
            v => v.Say($"{Misreads.Quote(v, said)} is not one of the words possible here.", $"{Misreads.Quote(v, said)} no es una de las palabras posibles aquí.") + Nearest.DidYouMean(v, said, words),
            v => v.Say($"Write one of: {string.Join(", ", words)}.", $"Escriba una de: {string.Join(", ", words)}."));
        reader.Skip();
    }

    /// <summary>What a scalar type is called; null for lists and members.</summary>
    private static Phrase? Wanted(Type type) =>
        type == typeof(Entry) ? Kinds.Quantity
        : type == typeof(string) ? Kinds.Text
        : type == typeof(bool) ? Kinds.YesOrNo
        : type == typeof(int) ? Kinds.WholeNumber
        : type == typeof(double) || type == typeof(decimal) ? Kinds.Number
        : null;

    private static class Kinds
    {
        public static readonly Phrase Quantity = v => v.Say("a quantity such as \"96 1/2 in\", or a number", "una cantidad como \"96 1/2 in\", o un número");
        public static readonly Phrase Text = v => v.Say("text; put quotes around a text that looks like a number", "texto; ponga entre comillas un texto que parece un número");
        public static readonly Phrase YesOrNo = v => v.Say("true or false", "true o false");
        public static readonly Phrase WholeNumber = v => v.Say("a whole number", "un número entero");
        public static readonly Phrase Number = v => v.Say("a number", "un número");
        public static readonly Phrase List = v => v.Say("a list", "una lista");
        public static readonly Phrase Members = v => v.Say("named values (name: value)", "valores con nombre (nombre: valor)");
    }

    /// <summary>The words of each closed family, as the file writes them.</summary>
    private static readonly FrozenDictionary<Type, IReadOnlyList<string>> Words = new Dictionary<Type, IReadOnlyList<string>>
    {
        [typeof(UnitSystem)] = WordsOf<UnitSystem>(),
        [typeof(Language)] = WordsOf<Language>(),
        [typeof(AirMovement)] = WordsOf<AirMovement>(),
        [typeof(OutlineShape)] = WordsOf<OutlineShape>(),
        [typeof(Weekday)] = WordsOf<Weekday>(),
        [typeof(Substrate)] = WordsOf<Substrate>(),
        [typeof(Doer)] = WordsOf<Doer>(),
        [typeof(SiteStep)] = WordsOf<SiteStep>(),
        [typeof(Bend)] = WordsOf<Bend>(),
        [typeof(ThinnerKind)] = WordsOf<ThinnerKind>(),
        [typeof(SolventName)] = WordsOf<SolventName>(),
        [typeof(EdgeKind)] = WordsOf<EdgeKind>(),
        [typeof(ProfileShape)] = WordsOf<ProfileShape>(),
        [typeof(SectionLineOn)] = WordsOf<SectionLineOn>(),
        [typeof(CutoutShape)] = WordsOf<CutoutShape>(),
        [typeof(MixBasis)] = WordsOf<MixBasis>(),
        [typeof(ApplicationMethod)] = WordsOf<ApplicationMethod>(),
        [typeof(EndOfPotLife)] = WordsOf<EndOfPotLife>(),
        [typeof(Carrier)] = WordsOf<Carrier>(),
        [typeof(Hazard)] = WordsOf<Hazard>(),
        [typeof(MaterialCharge)] = WordsOf<MaterialCharge>(),
        [typeof(Taxed)] = WordsOf<Taxed>(),
        [typeof(ShelfEntryKind)] = WordsOf<ShelfEntryKind>(),
        [typeof(GearUse)] = WordsOf<GearUse>(),
    }.ToFrozenDictionary();

    private static string[] WordsOf<T>() where T : struct, Enum =>
        [.. Enum.GetValues<T>().Select(value => JsonSerializer.Serialize(value, (JsonTypeInfo<T>)JobJson.Default.GetTypeInfo(typeof(T))!).Trim('"'))];

    private int Line(long index, ReadOnlySpan<byte> json)
    {
        _line += json[(int)_countedTo..(int)index].Count((byte)'\n');
        _countedTo = index;
        return _line;
    }

    private void Add(string path, int line, string code, Phrase text, Phrase cure)
    {
        if (_faults.Count < MostFaults) _faults.Add(new Fault(path, code, text, cure) { Line = line });
    }

    private void Unknown(string path, int line, string name, IReadOnlyList<string> known) => Add(path, line, "MemberUnknown",
        v => v.Say($"The name {Misreads.Quote(v, name)} is not known here.", $"El nombre {Misreads.Quote(v, name)} no se conoce aquí.") + Nearest.DidYouMean(v, name, known),
        v => v.Say($"Known are: {string.Join(", ", known)}.", $"Se conocen: {string.Join(", ", known)}."));

    private void SaidTwice(string path, int line, string name) => Add(path, line, "MemberTwice",
        v => v.Say($"The name {Misreads.Quote(v, name)} stands twice in the same place.", $"El nombre {Misreads.Quote(v, name)} está dos veces en el mismo lugar."),
        v => v.Say("Keep one of them.", "Deje uno de ellos."));

    private void WrongKind(string path, int line, Phrase wanted) => Add(path, line, "WrongKindOfValue",
        v => v.Say("This is not the kind of value that is needed here.", "Este no es el tipo de valor que hace falta aquí."),
        v => v.Say($"Write {wanted(v)}.", $"Escriba {wanted(v)}."));

    private void NothingThere(string path, int line) => Add(path, line, "ValueMissing",
        v => v.Say("There is no value here.", "Aquí no hay ningún valor."),
        v => v.Say("Write a value, or take the name out as well.", "Escriba un valor, o quite también el nombre."));

    private void NestedTooDeep(int line) => Add("", line, "NestedTooDeep",
        v => v.Say($"The file is nested deeper than {JobFile.DeepestNesting} levels.", $"El archivo tiene más de {JobFile.DeepestNesting} niveles anidados."),
        v => v.Say("A job needs about eight levels: check the brackets.", "Un trabajo necesita unos ocho niveles: revise los corchetes y llaves."));

    private void NotJson(int line) => Add("", line, "JsonNotUnderstood",
        v => v.Say("This is not JSON from here on.", "Desde aquí no es JSON."),
        v => v.Say("Check commas, quotes and brackets near this line.", "Revise las comas, comillas y corchetes cerca de esta línea."));

    private void OtherKindOfFile() => Add("", 1, "FileNotJson",
        v => v.Say("This file is not JSON: it does not begin with {.", "Este archivo no es JSON: no empieza con {."),
        v => v.Say(
            "Choose a copy that this program saved; its name ends in .json. YAML is read by the command line, lapwise, and not here.",
            "Elija una copia que guardó este programa; su nombre termina en .json. YAML lo lee la línea de comandos, lapwise, y no esto."));

    private void Empty() => Add("", 1, "FileEmpty",
        v => v.Say("The file is empty.", "El archivo está vacío."),
        v => v.Say("Choose another file, or start a new job.", "Elija otro archivo, o empiece un trabajo nuevo."));
}
