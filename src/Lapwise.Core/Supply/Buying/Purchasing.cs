using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Quantities;
using Lapwise.Core.Work.Risk;

namespace Lapwise.Core.Supply.Buying;

/// <summary>Which kits to buy for all coming jobs together, so that none runs short with a stated chance?</summary>
public static class Purchasing
{
    public const double UsualChance = 0.95;
    public const double LeastChance = 0.5;
    public const double MostChance = 0.999;
    public const int UsualTrials = 2000;
    public const ulong UsualSeed = 1;

    /// <summary>What the coats of a job take.</summary>
    /// <param name="supply">Of its order of work, which knows the tickets and who rolls; null: not planned, and what the materials say holds.</param>
    /// <param name="on">The day a coat, by its place from 0, goes on; null: not set.</param>
    /// <param name="board">The colours it covers may be bought; a clear coat waits for none.</param>
    public static IEnumerable<ComingNeed> NeedsOf(Job job, JobMaterials materials, JobSupply? supply, Func<int, DateOnly?> on, SampleBoard board) =>
        materials.Coats.Select((c, i) => (Coat: c, Planned: supply?.Coats[i], On: on(i), Shade: Shade.Of(c.Coat.Product.Id, c.Coat.Color)))
            .Select(c => new ComingNeed(job.Name, c.On, c.Shade, c.Coat.NetMl, (c.Planned?.NeedMl ?? c.Coat.NeedMl) - c.Coat.NetMl)
            {
                AwaitsBoard = board.Covers(c.Shade.Color) ? null : board,
                ThinnerMl = c.Planned?.ThinnerMl ?? c.Coat.ThinnerMl,
                Wipe = c.Coat.Coat.Wipe,
            });

    /// <summary>
    /// The cheapest kits for each product and colour. In each of many trials the losses of every coat are drawn by chance and
    /// the shelf is used up first expired first; what is then still missing must be bought. Enough is bought for the share of
    /// trials asked for, by the exact cheapest cover. A colour that waits for its sample board is held back and named.
    /// </summary>
    /// <param name="products">Must hold every product a need names; a need of another is left out.</param>
    /// <param name="own">The shop's own currency: of every price that names none.</param>
    /// <param name="chance">Wanted for each product and colour, <see cref="LeastChance"/> to <see cref="MostChance"/>.</param>
    public static Purchase Purchase(IReadOnlyList<ComingNeed> needs, Shelf shelf, IReadOnlyList<Product> products, Currency own, double chance = UsualChance, int trials = UsualTrials, ulong seed = UsualSeed)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(chance, LeastChance);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(chance, MostChance);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1);
        var known = products.DistinctBy(p => p.Id, StringComparer.Ordinal).ToDictionary(p => p.Id, StringComparer.Ordinal);
        var areHeld = needs.Where(n => known.ContainsKey(n.Shade.Product)).ToLookup(n => n.AwaitsBoard is not null);
        var (held, bought) = (areHeld[true], areHeld[false]);
        var shades = bought.GroupBy(n => n.Shade)
            .OrderBy(g => known[g.Key.Product].Name, StringComparer.Ordinal).ThenBy(g => g.Key.Color, StringComparer.OrdinalIgnoreCase);
        return new Purchase(chance, [.. shades.Select((g, i) => OfShade(known[g.Key.Product], [.. g], shelf, own, chance, trials, new Draws(seed + (ulong)i)))],
            BesideKits([.. bought], known),
            [
                .. held.GroupBy(n => (n.Shade, n.AwaitsBoard!.SignedOn is null ? null : n.AwaitsBoard.Shows))
                    .Select(g => new HeldBackNeed(known[g.Key.Shade.Product], [.. g], BuyingReasons.AwaitsBoard(known[g.Key.Shade.Product], [.. g]))),
            ]);
    }

    private static ShadePurchase OfShade(Product product, IReadOnlyList<ComingNeed> needs, Shelf shelf, Currency own, double chance, int trials, Draws draws)
    {
        var shade = needs[0].Shade;
        var ordered = needs.OrderBy(n => n.On ?? DateOnly.MaxValue).ThenBy(n => n.Job, StringComparer.Ordinal).ToList();
        var packs = shelf.Packs.Where(p => p.Shade.Equals(shade)).OrderBy(p => p.Expires ?? DateOnly.MaxValue).ToList();

        var missing = new double[trials];
        var losses = new double[ordered.Count];
        for (var t = 0; t < trials; t++)
        {
            for (var n = 0; n < losses.Length; n++)
                losses[n] = ordered[n].LossMl * Math.Exp(Defaults.Spread.Loss.Value * draws.Normal(((ulong)t * (ulong)ordered.Count) + (ulong)n));
            missing[t] = Missing(ordered, losses, packs);
        }

        Array.Sort(missing);
        var buyMl = missing[Enough(chance, trials)];
        var (kits, currency) = PricedAlike(product, own);
        var choice = Kits.Cheapest(kits, buyMl);
        var boughtMl = choice?.TotalMl ?? 0;
        var needMl = ordered.Sum(n => n.NeedMl);
        return new ShadePurchase(
            product, shade, ordered, needMl,
            needMl - Missing(ordered, [.. ordered.Select(n => n.LossMl)], packs),
            buyMl,
            choice?.Kits ?? [], new MoneyAmount(choice?.Cost ?? 0, currency),
            new Chance(missing.Count(m => m <= boughtMl + 1e-6), trials),
            new MoneyAmount(Kits.CostOfEach(kits, [.. ordered.Select(n => AtChance(n, chance))]), currency),
            BuyingReasons.Of(product, shade, ordered, packs, own),
            BasisOf(needMl, buyMl, chance));
    }

    /// <summary>Thinner by its name, then wiping solvent by its kind, as expected: neither is measured to the drop.</summary>
    private static IReadOnlyList<LiquidBesideKits> BesideKits(IReadOnlyList<ComingNeed> needs, Dictionary<string, Product> known) =>
    [
        .. needs.Where(n => n.ThinnerMl > 0).GroupBy(n => known[n.Shade.Product].Thinner?.Name ?? "", StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => new LiquidBesideKits(LiquidUse.Thinning, v => g.Key.Length > 0 ? g.Key : v.Say("thinner", "diluyente"), g.Count(), g.Sum(n => n.ThinnerMl)) { MayBurn = g.Any(n => known[n.Shade.Product].Thinner?.Kind is not ThinnerKind.Water) }),
        .. needs.Where(n => n.Wipe is not null).GroupBy(n => n.Wipe!.Solvent).OrderBy(g => g.Key)
            .Select(g => new LiquidBesideKits(LiquidUse.Wiping, Solvents.Of(g.Key).Name, g.Count(), g.Sum(n => n.Wipe!.AmountMl))),
    ];

    /// <summary>
    /// What the shelf cannot give. Jobs in order of their day take first what expires first: of jobs and packs that each
    /// have a last day, that uses the most of the shelf, for a pack that is passed over could only serve earlier jobs.
    /// </summary>
    public static double Missing(IReadOnlyList<ComingNeed> ordered, ReadOnlySpan<double> losses, IReadOnlyList<Pack> packs)
    {
        var (missing, first) = (0.0, 0);
        var left = packs.Count > 0 ? packs.Select(p => p.UsableMl).ToArray() : [];
        for (var n = 0; n < ordered.Count; n++)
        {
            var need = ordered[n].NetMl + losses[n];
            var on = ordered[n].On ?? DateOnly.MaxValue;
            for (var p = first; p < left.Length && need > 0; p++)
            {
                if (packs[p].IsExpired(on))
                {
                    first = p + 1; // it expires first, so all later jobs are too late for it as well
                    continue;
                }

                var taken = Math.Min(need, left[p]);
                (need, left[p]) = (need - taken, left[p] - taken);
            }

            missing += need;
        }

        return missing;
    }

    /// <summary>The kits whose prices can be held against one another: those in the shop's own currency, or in the first where none is.</summary>
    private static (IReadOnlyList<Kit> Kits, Currency Currency) PricedAlike(Product product, Currency own)
    {
        var priced = product.Kits.ToLookup(k => k.Currency ?? own);
        var currency = product.Kits.Count == 0 || priced.Contains(own) ? own : product.Kits[0].Currency!;
        return ([.. priced[currency]], currency);
    }

    /// <summary>What a coat takes with the chance asked for; alone it needs no trials.</summary>
    private static double AtChance(ComingNeed need, double chance) => need.NetMl + (need.LossMl * Math.Exp(Defaults.Spread.Loss.Value * NormalLaw.At(chance)));

    /// <summary>Place, in ascending order, of the first trial that is enough for the share asked for.</summary>
    private static int Enough(double chance, int trials) => Math.Clamp((int)Math.Ceiling((chance * trials) - 1e-9) - 1, 0, trials - 1);

    private static Basis BasisOf(double needMl, double buyMl, double chance) => new(
        "min Σ c_k x_k : Σ s_k x_k ≥ F⁻¹(p)",
        [
            new(v => v.Say("need of all jobs as expected", "necesidad de todos los trabajos, según lo previsto"), v => v.Volume(needMl)),
            new(v => v.Say("chance of not running short", "probabilidad de no quedarse corto"), v => v.Percent(chance, 1)),
            new(v => v.Say("spread of the losses", "dispersión de las pérdidas"), v => v.Percent(Defaults.Spread.Loss.Value)),
            new(v => v.Say("to buy at least", "comprar al menos"), v => v.Volume(buyMl)),
        ],
        Sources.ExactSearch);
}
