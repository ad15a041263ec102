namespace Lapwise.Core.Work.Order;

/// <summary>A set of sections that can be a key, as long as there are no more than <see cref="MostSections"/>.</summary>
internal readonly record struct SectionSet(UInt128 Low, UInt128 High)
{
    public const int MostSections = 256;

    public bool Holds(int section) => ((section < 128 ? Low >> section : High >> (section - 128)) & UInt128.One) != 0;

    /// <summary>With the section where it was not in it, without where it was. Past the most sections it means nothing.</summary>
    public SectionSet Toggle(int section) => section < 128 ? this with { Low = Low ^ (UInt128.One << section) } : this with { High = High ^ (UInt128.One << (section - 128)) };
}
