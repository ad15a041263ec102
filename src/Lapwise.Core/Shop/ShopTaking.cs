using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;

namespace Lapwise.Core.Shop;

[JsonConverter(typeof(CamelCaseEnumConverter<ShopPart>))]
public enum ShopPart { Job, Product, ShelfEntry, Keep, Rates, Days, Settled, Quote }

[JsonConverter(typeof(CamelCaseEnumConverter<TakingIn>))]
public enum TakingIn
{
    /// <summary>Not there yet: it is put in.</summary>
    New,
    /// <summary>There, and different: it is written over.</summary>
    Changed,
    /// <summary>There, and the same: nothing is done.</summary>
    Same,
    /// <summary>An entry of the log, or a quote given out, that is there with other words: neither is ever edited, so it stays as it is.</summary>
    Kept,
}

/// <summary>What taking in one thing would do.</summary>
/// <param name="Differences">Each value that would change, by its path.</param>
public sealed record TakingStep(ShopPart Part, string Id, string Name, TakingIn What, IReadOnlyList<Difference> Differences);

/// <summary>What taking in a document would change, told before anything is. Nothing is ever taken out by it.</summary>
public static class ShopTaking
{
    /// <param name="own">The shop as it stands.</param>
    /// <param name="other">What is to be taken in.</param>
    public static IReadOnlyList<TakingStep> Plan(ShopDocument own, ShopDocument other) =>
    [
        .. Steps(ShopPart.Product, own.Products, other.Products, p => p.Id, p => p.Name, JobJson.Default.ProductDocument, TakingIn.Changed),
        .. Steps(ShopPart.Job, own.Jobs, other.Jobs, j => j.Id, j => j.Job.Name, ShopJson.Default.KeptJobDocument, TakingIn.Changed),
        .. Steps(ShopPart.ShelfEntry, own.Shelf?.Entries ?? [], other.Shelf?.Entries ?? [], e => e.Id, e => e.Pack, JobJson.Default.ShelfEntryDocument, TakingIn.Kept),
        .. Steps(ShopPart.Keep, own.Shelf?.Keep ?? [], other.Shelf?.Keep ?? [], KeepId, KeepId, JobJson.Default.KeepDocument, TakingIn.Changed),
        .. other.Rates is { } rates ? Steps(ShopPart.Rates, own.Rates is { } had ? [had] : [], [rates], _ => "", _ => "", JobJson.Default.RatesDocument, TakingIn.Changed) : [],
        .. other.Days is { } days ? Steps(ShopPart.Days, own.Days is { } stood ? [stood] : [], [days], _ => "", _ => "", JobJson.Default.DaysDocument, TakingIn.Changed) : [],
        .. other.Settled is { } settled ? Steps(ShopPart.Settled, own.Settled is { } held ? [held] : [], [Settling.Taken(own.Settled, settled)], _ => "", _ => "", JobJson.Default.SettledDaysDocument, TakingIn.Changed) : [],
        .. Steps(ShopPart.Quote, own.Quotes ?? [], other.Quotes ?? [], q => q.Id, q => q.Number, ShopJson.Default.IssuedQuote, TakingIn.Kept),
    ];

    /// <summary>What is to be kept after another shop's is taken in: the other's level where it names one, the own elsewhere.</summary>
    public static IReadOnlyList<KeepDocument> Keeps(ShelfDocument? own, ShelfDocument? other) =>
        [.. (other?.Keep ?? []).Concat(own?.Keep ?? []).DistinctBy(KeepId, StringComparer.OrdinalIgnoreCase)];

    private static string KeepId(KeepDocument keep) => $"{keep.Product} {keep.Color?.Trim()}".TrimEnd();

    private static IEnumerable<TakingStep> Steps<T>(ShopPart part, IReadOnlyList<T> own, IReadOnlyList<T> other, Func<T, string> id, Func<T, string> name, JsonTypeInfo<T> json, TakingIn whereItDiffers)
    {
        var had = own.DistinctBy(id, StringComparer.Ordinal).ToDictionary(id, StringComparer.Ordinal);
        foreach (var one in other.DistinctBy(id, StringComparer.Ordinal))
        {
            if (!had.TryGetValue(id(one), out var before))
            {
                yield return new TakingStep(part, id(one), name(one), TakingIn.New, []);
                continue;
            }

            // Most of a shop comes back as it went: the text is compared before the tree is built.
            var (a, b) = (JsonSerializer.Serialize(before, json), JsonSerializer.Serialize(one, json));
            if (a == b) yield return new TakingStep(part, id(one), name(one), TakingIn.Same, []);
            else yield return new TakingStep(part, id(one), name(one), whereItDiffers, [.. JobMerging.Differing("", JsonNode.Parse(a), JsonNode.Parse(b))]);
        }
    }
}
