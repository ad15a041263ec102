using Lapwise.Core;
using Lapwise.Core.Bases;
using Lapwise.Core.Explain;

namespace Lapwise.Documents.Parts;

/// <summary>Where the numbers of the sheet come from: numbered, each with its formula, inputs and source.</summary>
internal static class BasesPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice)
    {
        var numbers = JobBases.Of(whole).ToList();
        if (numbers.Count == 0) yield break;
        var sources = numbers.Select(n => n.Basis.Source).Distinct().ToList();
        yield return new Block.Heading(1, voice.Say("Where the numbers come from", "De dónde salen los números"));
        yield return new Block.Table(
            [new(voice.Say("n", "n.º"), 0.5, Right: true), new(voice.Say("number", "número"), 2.5), new(voice.Say("it is", "es"), 2.1), new(voice.Say("formula, and what went in", "fórmula, y lo que entró"), 5.3), new(voice.Say("source", "fuente"), 0.8, Right: true)],
            [.. numbers.Select((n, i) => new Row(
            [
                $"{i + 1}", n.Of.Length > 0 ? $"{n.Of}, {n.Name(voice)}" : n.Name(voice), n.Shown(voice),
                string.Join("; ", n.Basis.Inputs.Select(x => Input(x.Name(voice), x.Value(voice))).Prepend(voice.Formula(n.Basis.Formula))),
                Letter(sources.IndexOf(n.Basis.Source)),
            ]))]);
        yield return new Block.Heading(2, voice.Say("The sources, by their letter", "Las fuentes, por su letra"));
        yield return new Block.Items([.. sources.Select((s, i) => new Item(ItemMark.Point, $"{Letter(i)}: {s.Title(voice)} ({Sources.Say(s.Standing, voice)})"))]);
    }

    // "Shelf 1 4.2 ft" would be read as one number.
    private static string Input(string name, string value) => char.IsAsciiDigit(name[^1]) && char.IsAsciiDigit(value[0]) ? $"{name}: {value}" : $"{name} {value}";

    private static string Letter(int place) => place < 26 ? ((char)('a' + place)).ToString() : $"a{(char)('a' + place - 26)}";
}
