using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Supply;

/// <summary>Writes the slip for one batch: how much of each to measure, on the cup's marks and on the scale's steps.</summary>
public static class Ticketing
{
    /// <param name="batch">Name of the batch.</param>
    /// <param name="wantedMl">All parts together that the plan asks for, above 0; the ticket never makes less.</param>
    public static BatchTicket Ticket(Coat coat, Tools tools, string batch, double wantedMl)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wantedMl);
        var product = coat.Product;
        var parts = product.Recipe.Parts;
        IReadOnlyList<double> shares = [.. product.Recipe.Of(1).Select(p => p.Ml)];

        var onCup = new ReadableMarks(shares, [.. parts.Select(_ => tools.CupStepMl)]);
        var cup = onCup.Best(wantedMl, Consumption.Of(coat, tools).LargestBatchMl);

        // The scale reads the same batch as the cup, so that A by one and B by the other still make the mix; where the cup
        // cannot read the ratio, the scale stands alone.
        var onScale = new ReadableMarks(shares, [.. parts.Select(p => tools.ScaleStepG / p.DensityGPerMl)]);
        var cupReads = Math.Abs(onCup.RatioError(cup)) <= BatchTicket.MostRatioError;
        var scale = onScale.Next(cupReads ? onCup.TotalMl(cup) : wantedMl, wantedMl);

        return new BatchTicket(
            batch,
            wantedMl,
            [.. parts.Select((p, i) => new Measured(p.Name, onCup.Ml(cup, i), scale[i] * tools.ScaleStepG))],
            ThinnerSteps(coat, onCup.TotalMl(cup), tools.CupStepMl) * tools.CupStepMl,
            product.Thinner is { } thinner
                ? ThinnerSteps(coat, onScale.TotalMl(scale), tools.ScaleStepG / thinner.DensityGPerMl) * tools.ScaleStepG
                : 0,
            onCup.RatioError(cup),
            onScale.RatioError(scale))
        {
            ThinnerWantedMl = ThinnerWanted(coat, onCup.TotalMl(cup)),
            ThinnerDensityGPerMl = product.Thinner?.DensityGPerMl ?? 1,
        };
    }

    private static double ThinnerWanted(Coat coat, double mixMl) => Math.Min(coat.ThinnerFraction, coat.Product.Thinner?.LimitFraction ?? 0) * mixMl;

    /// <summary>The nearest mark to the wanted thinner that is not over the product's limit for what was measured.</summary>
    private static long ThinnerSteps(Coat coat, double mixMl, double stepMl)
    {
        var limit = coat.Product.Thinner?.LimitFraction ?? 0;
        var nearest = (long)Math.Round(ThinnerWanted(coat, mixMl) / stepMl, MidpointRounding.AwayFromZero);
        var most = (long)Math.Floor((limit * mixMl / stepMl) + 1e-9);
        return Math.Min(nearest, most);
    }
}
