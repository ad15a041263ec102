namespace Lapwise.Core.Work.Risk;

/// <summary>
/// Numbers drawn by place, not in turn: the same seed, trial and subject give the same number everywhere, whatever else is
/// drawn. The mixing step is that of SplitMix64 (Steele, Lea, Flood, OOPSLA 2014; constants from memory, held by a test
/// against its published first outputs).
/// </summary>
public readonly record struct Draws(ulong Seed)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    /// <summary>Sixty-four random bits for a place in the sequence, from 0.</summary>
    public ulong Bits(ulong place)
    {
        var z = Seed + ((place + 1) * Golden);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }

    /// <summary>Even over 0 to 1, neither end reached.</summary>
    public double Even(ulong place) => ((Bits(place) >> 11) + 0.5) * (1.0 / (1UL << 53));

    /// <summary>Standard normal.</summary>
    public double Normal(ulong place) => NormalLaw.At(Even(place));
}
