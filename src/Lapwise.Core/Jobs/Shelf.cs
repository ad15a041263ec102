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

/// <summary>One kit on the shelf: its A and B belong together.</summary>
/// <param name="Lot">Maker's number; empty: not noted.</param>
/// <param name="Expires">Last day it may be used; null: not noted.</param>
/// <param name="Opened">Null: closed.</param>
public sealed record Pack(string Id, Shade Shade, string Lot, double SizeMl, DateOnly? Expires, DateOnly? Opened, double LeftAMl, double LeftBMl)
{
    /// <summary>Share of A in the pack as filled.</summary>
    public double ShareA { get; init; }

    /// <summary>Share of C of a three-part product, which is taken to go with A and B; 0: two parts.</summary>
    public double ShareC { get; init; }

    private double ShareB => 1 - ShareA - ShareC;

    /// <summary>All parts together that can be mixed at the ratio: the part that runs out first counts.</summary>
    public double UsableMl => Math.Min(LeftAMl / ShareA, LeftBMl / ShareB);

    public bool IsExpired(DateOnly on) => Expires is { } last && on > last;

    public Pack Less(double ml) => this with { LeftAMl = Math.Max(0, LeftAMl - (ml * ShareA)), LeftBMl = Math.Max(0, LeftBMl - (ml * ShareB)) };
}

/// <summary>What stands on the shelf after every entry, and what should be kept.</summary>
/// <param name="Packs">Those with anything left, first expired first.</param>
public sealed record Shelf(IReadOnlyList<Pack> Packs, IReadOnlyList<Keep> Keeps);

public sealed record Keep(Shade Shade, double LeastMl);
