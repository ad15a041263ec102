using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>One part of a mix of any number of parts.</summary>
/// <param name="ByVolume">Its parts by volume.</param>
public sealed record MixPart(string Name, double ByVolume, double DensityGPerMl)
{
    /// <summary>A part given by mass, turned through its density.</summary>
    public static MixPart ByMass(string name, double parts, double densityGPerMl) => new(name, parts / densityGPerMl, densityGPerMl);
}

/// <summary>How much of one part to measure.</summary>
public sealed record Measured(string Name, double Ml, double G);

/// <summary>What an opened kit still makes at its ratio.</summary>
/// <param name="RunsOut">The part that runs out first.</param>
/// <param name="Left">What is then left of each.</param>
public sealed record Remainder(double MixMl, string RunsOut, IReadOnlyList<Measured> Use, IReadOnlyList<Measured> Left);

/// <summary>A mix of two, three or more parts.</summary>
public sealed record Recipe(IReadOnlyList<MixPart> Parts)
{
    private double Whole => Parts.Sum(p => p.ByVolume);

    /// <summary>The parts by name: <c>A and B</c>, or <c>A, B and C</c>.</summary>
    public string Names(Voice v) => v.List([.. Parts.Select(p => p.Name)]);

    /// <summary>The ratio by volume against its smallest part, as <c>4 : 1 : 0.5</c> has it <c>8 : 2 : 1</c>.</summary>
    public string Ratio(Voice v) => string.Join(" : ", Parts.Select(p => v.Number(p.ByVolume / Parts.Min(q => q.ByVolume))));

    /// <summary>Volume of the mix that uses up so much of each part, whichever asks for most; kits hold all parts at the ratio.</summary>
    public double MixThatHolds(IReadOnlyList<double> partsMl) => Parts.Select((p, i) => partsMl[i] * Whole / p.ByVolume).Max();

    public double DensityGPerMl => Parts.Sum(p => p.ByVolume * p.DensityGPerMl) / Whole;

    /// <param name="mixMl">All parts together.</param>
    public IReadOnlyList<Measured> Of(double mixMl) => [.. Parts.Select(p => new Measured(p.Name, mixMl * p.ByVolume / Whole, mixMl * p.ByVolume / Whole * p.DensityGPerMl))];

    /// <summary>Scales a partly used kit by what is left of each part; the scarcest rules, for a mix off ratio never cures right.</summary>
    /// <param name="leftMl">What is left of each part, in the order of the parts.</param>
    public Remainder From(IReadOnlyList<double> leftMl)
    {
        var scarcest = Enumerable.Range(0, Parts.Count).MinBy(i => leftMl[i] / Parts[i].ByVolume);
        var mixMl = leftMl[scarcest] / Parts[scarcest].ByVolume * Whole;
        var use = Of(mixMl);
        return new Remainder(mixMl, Parts[scarcest].Name, use,
            [.. use.Select((u, i) => new Measured(u.Name, Math.Max(0, leftMl[i] - u.Ml), Math.Max(0, leftMl[i] - u.Ml) * Parts[i].DensityGPerMl))]);
    }

    /// <summary>(First : other as measured) / (first : other wanted) − 1, of the part that is furthest off.</summary>
    public double WorstRatioError(IReadOnlyList<double> measuredMl) => Enumerable.Range(1, Parts.Count - 1)
        .Select(i => (measuredMl[0] / measuredMl[i] / (Parts[0].ByVolume / Parts[i].ByVolume)) - 1)
        .MaxBy(Math.Abs);
}
