using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>One number of an answer.</summary>
/// <param name="Name">Its name with its unit, as <c>wetFilmUm</c>; times end in S.</param>
public sealed record QuickRow(string Name, Phrase Label, double Value, Phrase Shown, Basis Basis);

/// <summary>What a quick sum gives.</summary>
public sealed record QuickResult(IReadOnlyList<QuickRow> Rows)
{
    public IReadOnlyList<Reason> Reasons { get; init; } = [];
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];
    public Curve? Curve { get; init; }

    /// <summary>A room hour by hour, with the readings it was judged by.</summary>
    public RoomDay? Day { get; init; }

    /// <summary>What to do next, in order; empty where the numbers say it all.</summary>
    public IReadOnlyList<Phrase> Steps { get; init; } = [];
}

/// <summary>A sum that needs no job: what it asks for, and how it is worked.</summary>
/// <param name="Name">As <c>dew-point</c> in <c>lapwise quick dew-point</c> and in a page's address.</param>
/// <param name="Phase">Where in a job its numbers appear.</param>
public sealed record QuickSum(string Name, Phase Phase, Phrase Title, Phrase Question, IReadOnlyList<QuickField> Fields, Func<QuickValues, QuickResult> Work)
{
    /// <summary>Every quick sum, in the order in which a job meets them.</summary>
    public static IReadOnlyList<QuickSum> All { get; } =
    [
        QuickWidth.Sum, QuickFilm.Sum, QuickSpread.Sum, QuickMix.Sum, QuickVoc.Sum,
        QuickDewPoint.Sum, QuickDay.Sum, QuickOpenTime.Sum, QuickPotLife.Sum, QuickCure.Sum, QuickVapour.Sum,
    ];

    /// <summary>Reads what was written and works it; null with every fault.</summary>
    /// <param name="written">By field name.</param>
    public (QuickResult? Result, IReadOnlyList<Fault> Faults) Answer(IReadOnlyDictionary<string, string> written, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(written);
        var values = new QuickValues(this, written, units);
        if (values.Faults.Count > 0) return (null, values.Faults);
        var result = Work(values);
        return values.Faults.Count > 0 ? (null, values.Faults) : (result, []);
    }
}

/// <summary>What was written for one sum, read. Fields are asked for by themselves, so a name cannot be misspelt.</summary>
public sealed class QuickValues
{
    private readonly Dictionary<string, double> _numbers = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _words = new(StringComparer.Ordinal);
    private readonly Fields _fields;

    internal QuickValues(QuickSum sum, IReadOnlyDictionary<string, string> written, UnitSystem units)
    {
        (Units, _fields) = (units, new Fields(units));
        var known = sum.Fields.Select(f => f.Name).ToList();
        foreach (var name in written.Keys.Where(k => !known.Contains(k, StringComparer.Ordinal)).Order(StringComparer.Ordinal)) Unknown(name, known);
        foreach (var field in sum.Fields) ReadOne(field, written.GetValueOrDefault(field.Name) ?? field.Else);
    }

    public UnitSystem Units { get; }

    public IReadOnlyList<Fault> Faults => _fields.Faults;

    /// <summary>A field that is needed or has its own value where left out.</summary>
    public double Of(QuickField field) => _numbers[field.Name];

    public double Or(QuickField field, double left) => _numbers.GetValueOrDefault(field.Name, left);

    public double? If(QuickField field) => _numbers.TryGetValue(field.Name, out var value) ? value : null;

    public string Word(QuickField field) => _words[field.Name];

    public bool Has(QuickField field) => _numbers.ContainsKey(field.Name) || _words.ContainsKey(field.Name);

    /// <summary>Values that cannot stand together, each good by itself.</summary>
    public void Refuse(QuickField at, string code, Phrase text, Phrase cure) => _fields.Add(at.Name, code, text, cure);

    /// <summary>What a text could not be read for, at its field.</summary>
    public void Refuse(QuickField at, IEnumerable<Fault> faults) => _fields.AddRange(faults.Select(f => f with { Path = at.Name }));

    private void ReadOne(QuickField field, string? written)
    {
        if (string.IsNullOrWhiteSpace(written) && !field.Needed) return;
        if (field.IsLines) _words[field.Name] = written ?? "";
        else if (field.Words.Count == 0) _numbers[field.Name] = field.Read!(_fields, field.Name, written ?? "");
        else if (field.Words.Any(w => w.Word == written)) _words[field.Name] = written!;
        else
        {
            _fields.Add(field.Name, "WordUnknown",
                v => v.Say($"{Misreads.Quote(v, written ?? "")} is not a choice here.", $"{Misreads.Quote(v, written ?? "")} no es una opción aquí.") + Nearest.DidYouMean(v, written ?? "", [.. field.Words.Select(w => w.Word)]),
                v => v.Say($"Use one of: {field.WordsInARow}.", $"Use una de: {field.WordsInARow}."));
        }
    }

    private void Unknown(string name, IReadOnlyList<string> known) => _fields.Add(name, "NameUnknown",
        v => v.Say($"The name {Misreads.Quote(v, name)} is not known here.", $"El nombre {Misreads.Quote(v, name)} no se conoce aquí.") + Nearest.DidYouMean(v, name, known),
        v => v.Say($"Known are: {string.Join(", ", known)}.", $"Se conocen: {string.Join(", ", known)}."));
}
