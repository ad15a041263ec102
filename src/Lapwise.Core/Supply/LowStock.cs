using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Supply.Buying;

namespace Lapwise.Core.Supply;

/// <summary>What of a shade is there, kept back and asked for.</summary>
/// <param name="UsableMl">A and B that can be mixed and is not expired today.</param>
/// <param name="KeepMl">Least the shop wants to keep; 0: not said.</param>
/// <param name="ComingMl">What coming jobs take.</param>
public sealed record StockLevel(Shade Shade, double UsableMl, double ExpiredMl, double KeepMl, double ComingMl)
{
    public bool IsLow => UsableMl < KeepMl || UsableMl < ComingMl;
}

/// <summary>What is low on the shelf: under the least that is to be kept, or under what coming jobs take.</summary>
public static class LowStock
{
    /// <summary>Every shade that stands on the shelf, is to be kept or is asked for; low ones first.</summary>
    public static IReadOnlyList<StockLevel> Levels(Shelf shelf, IReadOnlyList<ComingNeed> needs, DateOnly today) =>
    [
        .. shelf.Packs.Select(p => p.Shade).Concat(shelf.Keeps.Select(k => k.Shade)).Concat(needs.Select(n => n.Shade)).Distinct()
            .Select(shade => new StockLevel(
                shade,
                shelf.Packs.Where(p => p.Shade.Equals(shade) && !p.IsExpired(today)).Sum(p => p.UsableMl),
                shelf.Packs.Where(p => p.Shade.Equals(shade) && p.IsExpired(today)).Sum(p => p.UsableMl),
                shelf.Keeps.Where(k => k.Shade.Equals(shade)).Sum(k => k.LeastMl),
                needs.Where(n => n.Shade.Equals(shade)).Sum(n => n.NeedMl)))
            .OrderByDescending(l => l.IsLow).ThenBy(l => l.Shade.Product, StringComparer.Ordinal).ThenBy(l => l.Shade.Color, StringComparer.OrdinalIgnoreCase),
    ];
}
