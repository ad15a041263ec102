namespace Lapwise.Core.Jobs;

/// <summary>A product in one colour: what can stand in for one another on a shelf.</summary>
/// <param name="Color">Empty: clear.</param>
public readonly record struct Shade(string Product, string Color)
{
    public static Shade Of(string product, string? color) => new(product, (color ?? "").Trim());

    /// <summary>Colours that differ only in case are one tin.</summary>
    public bool Equals(Shade other) => Product == other.Product && Color.Equals(other.Color, StringComparison.OrdinalIgnoreCase);

    public override int GetHashCode() => HashCode.Combine(Product, Color.ToUpperInvariant());
}

/// <summary>One part of a pack.</summary>
/// <param name="Share">Of the pack as filled, by volume.</param>
public readonly record struct PackPart(string Name, double Share, double LeftMl);

/// <summary>One kit on the shelf: its parts belong together.</summary>
/// <param name="Lot">Maker's number; empty: not noted.</param>
/// <param name="Expires">Last day it may be used; null: not noted.</param>
/// <param name="Opened">Null: closed.</param>
/// <param name="Parts">A first; two or more.</param>
public sealed record Pack(string Id, Shade Shade, string Lot, double SizeMl, DateOnly? Expires, DateOnly? Opened, IReadOnlyList<PackPart> Parts)
{
    /// <summary>The parts of a pack that nothing was taken of.</summary>
    public static IReadOnlyList<PackPart> Full(Recipe recipe, double sizeMl) => [.. recipe.Of(sizeMl).Select(p => new PackPart(p.Name, p.Ml / sizeMl, p.Ml))];

    /// <summary>All parts together that can be mixed at the ratio: the part that runs out first counts.</summary>
    public double UsableMl => Parts.Min(p => p.LeftMl / p.Share);

    /// <summary>Share of the pack by which its fullest part is fuller than its emptiest; 0: all run out together.</summary>
    public double Uneven => Parts.Max(p => p.LeftMl / p.Share / SizeMl) - (UsableMl / SizeMl);

    public bool IsExpired(DateOnly on) => Expires is { } last && on > last;

    /// <summary>After so much of the mix was made of it.</summary>
    public Pack Less(double mixMl) => With([.. Parts.Select(p => Math.Max(0, p.LeftMl - (mixMl * p.Share)))]);

    /// <param name="leftMl">What is left of each part, in their order.</param>
    public Pack With(IReadOnlyList<double> leftMl) => this with { Parts = [.. Parts.Select((p, i) => p with { LeftMl = leftMl[i] })] };
}

/// <summary>What stands on the shelf after every entry, and what should be kept.</summary>
/// <param name="Packs">Those with anything left, first expired first.</param>
public sealed record Shelf(IReadOnlyList<Pack> Packs, IReadOnlyList<Keep> Keeps);

public sealed record Keep(Shade Shade, double LeastMl);
