using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Quick;

/// <summary>One thing a quick sum asks for.</summary>
/// <param name="Name">How it is written: <c>wet</c> in <c>wet=6mil</c>.</param>
/// <param name="Example">As one would write it, in the person's units.</param>
public sealed record QuickField(string Name, Phrase Label, Phrase Example)
{
    /// <summary>Must be given; otherwise it may be left out.</summary>
    public bool Needed { get; init; }

    /// <summary>Sharpens the answer, and can wait: a page asks for it only of those who look.</summary>
    public bool Finer { get; init; }

    /// <summary>The words it takes, where it takes one of a few.</summary>
    public IReadOnlyList<QuickWord> Words { get; init; } = [];

    public string WordsInARow => string.Join(", ", Words.Select(w => w.Word));

    /// <summary>Takes many lines of text, as a logger's file; on the command line the path of one.</summary>
    public bool IsLines { get; init; }

    /// <summary>What it takes where left out, as written.</summary>
    public string? Else { get; init; }

    internal Func<Fields, string, Entry, double>? Read { get; init; }

    internal Func<Voice, double, string>? Show { get; init; }

    /// <summary>What is written here may carry one unit or another.</summary>
    public bool HasUnit => Show is not null;

    /// <summary>How what was written is understood, in the units of the voice; null where it is not.</summary>
    public string? AsRead(string written, UnitSystem units, Voice voice)
    {
        if (Read is null || Show is null || string.IsNullOrWhiteSpace(written)) return null;
        var fields = new Fields(units);
        var value = Read(fields, Name, written);
        return fields.Count > 0 ? null : Show(voice, value);
    }

    public QuickField CanWait => this with { Finer = true };

    public QuickField Must => this with { Needed = true };
}

/// <summary>A word that a field takes, and how it is said.</summary>
public sealed record QuickWord(string Word, Phrase Say);

/// <summary>The kinds of fields, each read and bounded as in a job.</summary>
internal static class Asks
{
    public static readonly Bounds AnyTemperature = Ranges.RoomTemperature;
    private static readonly Bounds Parts = new(0.001, 10_000, (v, x) => v.Number(x)) { AboveZero = true };
    private static readonly Bounds AnyArea = new(0.0001, 100_000, (v, x) => v.Area(x)) { AboveZero = true };
    private static readonly Bounds AnyVolume = new(0.1, 1_000_000, (v, x) => v.Volume(x)) { AboveZero = true };
    private static readonly Bounds AnyLength = new(0, 1000, (v, x) => v.Run(x));
    private static readonly Bounds VocShare = new(0, 1.2, (v, x) => v.Voc(x * 1000));
    private static readonly Bounds Shares = new(0, 1, (v, x) => v.Percent(x));

    public static QuickField Film(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "6mil" : "150um") { Read = (f, p, e) => f.Film(p, e), Show = (v, x) => v.Film(x) };

    public static QuickField Area(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "48ft2" : "4.5m2") { Read = (f, p, e) => f.Area(p, e, AnyArea), Show = (v, x) => v.Area(x) };

    public static QuickField Volume(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "24floz" : "700mL") { Read = (f, p, e) => f.Volume(p, e, AnyVolume), Show = (v, x) => v.Volume(x) };

    public static QuickField Mass(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "2lb" : "900g") { Read = (f, p, e) => f.Mass(p, e, Ranges.MixMass), Show = (v, x) => v.Mass(x) };

    public static QuickField Length(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "12ft" : "3.6m") { Read = (f, p, e) => f.Length(p, e, AnyLength), Show = (v, x) => v.Length(x) };

    public static QuickField Temperature(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "73F" : "23C") { Read = (f, p, e) => f.Temperature(p, e, AnyTemperature), Show = (v, x) => v.Temperature(x) };

    public static QuickField Time(string name, Phrase label) => new(name, label, _ => "45min") { Read = (f, p, e) => f.Time(p, e, Ranges.Wait), Show = (_, x) => Voice.Span(x) };

    public static QuickField Share(string name, Phrase label) => new(name, label, _ => "62%") { Read = (f, p, e) => f.Share(p, e, Shares), Show = (v, x) => v.Percent(x, 1) };

    public static QuickField Humidity(string name, Phrase label) => new(name, label, _ => "55%") { Read = (f, p, e) => f.Humidity(p, e), Show = (v, x) => v.Percent(x, 1) };

    public static QuickField Density(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "9.2lb/gal" : "1.1g/mL") { Read = (f, p, e) => f.Density(p, e), Show = (v, x) => v.Density(x) };

    public static QuickField Voc(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "2.8lb/gal" : "340g/L") { Read = (f, p, e) => f.Concentration(p, e, VocShare), Show = (v, x) => v.Voc(x * 1000) };

    public static QuickField Heat(string name, Phrase label) => new(name, label, _ => "380J/g") { Read = (f, p, e) => f.HeatOfMix(p, e), Show = (v, x) => v.HeatPerMass(x) };

    public static QuickField Part(string name, Phrase label) => new(name, label, _ => "2") { Read = (f, p, e) => f.Number(p, e, Parts) };

    public static QuickField Number(string name, Phrase label, string example, double least, double most) =>
        new(name, label, _ => example) { Read = (f, p, e) => f.Number(p, e, new Bounds(least, most, (v, x) => v.Number(x))) };

    public static QuickField OneOf(string name, Phrase label, params IReadOnlyList<QuickWord> words) => new(name, label, _ => words[0].Word) { Words = words, Else = words[0].Word };

    public static QuickField Lines(string name, Phrase label, Phrase example) => new(name, label, example) { IsLines = true };

    public static QuickWord Word(string word, string en, string es) => new(word, v => v.Say(en, es));
}
