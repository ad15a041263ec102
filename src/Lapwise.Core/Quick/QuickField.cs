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

    /// <summary>The words it takes, where it takes one of a few.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>What it takes where left out, as written.</summary>
    public string? Else { get; init; }

    internal Func<Fields, string, Entry, double>? Read { get; init; }

    public QuickField Must => this with { Needed = true };
}

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

    public static QuickField Film(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "6mil" : "150um") { Read = (f, p, e) => f.Film(p, e) };

    public static QuickField Area(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "48ft2" : "4.5m2") { Read = (f, p, e) => f.Area(p, e, AnyArea) };

    public static QuickField Volume(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "24floz" : "700mL") { Read = (f, p, e) => f.Volume(p, e, AnyVolume) };

    public static QuickField Mass(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "2lb" : "900g") { Read = (f, p, e) => f.Mass(p, e, Ranges.MixMass) };

    public static QuickField Length(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "12ft" : "3.6m") { Read = (f, p, e) => f.Length(p, e, AnyLength) };

    public static QuickField Temperature(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "73F" : "23C") { Read = (f, p, e) => f.Temperature(p, e, AnyTemperature) };

    public static QuickField Time(string name, Phrase label) => new(name, label, _ => "45min") { Read = (f, p, e) => f.Time(p, e, Ranges.Wait) };

    public static QuickField Share(string name, Phrase label) => new(name, label, _ => "62%") { Read = (f, p, e) => f.Share(p, e, Shares) };

    public static QuickField Humidity(string name, Phrase label) => new(name, label, _ => "55%") { Read = (f, p, e) => f.Humidity(p, e) };

    public static QuickField Density(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "9.2lb/gal" : "1.1g/mL") { Read = (f, p, e) => f.Density(p, e) };

    public static QuickField Voc(string name, Phrase label) => new(name, label, v => v.Units is UnitSystem.Us ? "2.8lb/gal" : "340g/L") { Read = (f, p, e) => f.Concentration(p, e, VocShare) };

    public static QuickField Heat(string name, Phrase label) => new(name, label, _ => "380J/g") { Read = (f, p, e) => f.HeatOfMix(p, e) };

    public static QuickField Part(string name, Phrase label) => new(name, label, _ => "2") { Read = (f, p, e) => f.Number(p, e, Parts) };

    public static QuickField Number(string name, Phrase label, string example, double least, double most) =>
        new(name, label, _ => example) { Read = (f, p, e) => f.Number(p, e, new Bounds(least, most, (v, x) => v.Number(x))) };

    public static QuickField OneOf(string name, Phrase label, params string[] words) => new(name, label, _ => words[0]) { Words = words, Else = words[0] };
}
