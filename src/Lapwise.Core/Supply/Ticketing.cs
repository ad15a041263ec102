using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;

namespace Lapwise.Core.Supply;

/// <summary>Writes the slip for one batch: how much of each to measure, on the cup's marks and on the scale's steps.</summary>
public static class Ticketing
{
    /// <param name="batch">Name of the batch.</param>
    /// <param name="wantedMl">A and B together that the plan asks for, above 0; the ticket never makes less.</param>
    public static BatchTicket Ticket(Coat coat, Tools tools, string batch, double wantedMl)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(wantedMl);
        var product = coat.Product;
        var shareA = product.Mix.ShareA;

        var onCup = new ReadableMarks(shareA, tools.CupStepMl, tools.CupStepMl);
        var cup = onCup.Best(wantedMl, Consumption.Of(coat, tools).LargestBatchMl);

        // The scale reads the same batch as the cup, so that A by one and B by the other still make the mix; where the cup
        // cannot read the ratio, the scale stands alone.
        var onScale = new ReadableMarks(shareA, tools.ScaleStepG / product.DensityAGPerMl, tools.ScaleStepG / product.DensityBGPerMl);
        var cupReads = Math.Abs(onCup.RatioError(cup)) <= BatchTicket.MostRatioError;
        var scale = onScale.Next(cupReads ? onCup.TotalMl(cup) : wantedMl, wantedMl);

        return new BatchTicket(
            batch,
            wantedMl,
            onCup.AMl(cup),
            onCup.BMl(cup),
            ThinnerSteps(coat, onCup.TotalMl(cup), tools.CupStepMl) * tools.CupStepMl,
            scale.A * tools.ScaleStepG,
            scale.B * tools.ScaleStepG,
            product.Thinner is { } thinner
                ? ThinnerSteps(coat, onScale.TotalMl(scale), tools.ScaleStepG / thinner.DensityGPerMl) * tools.ScaleStepG
                : 0,
            onCup.RatioError(cup),
            onScale.RatioError(scale));
    }

    /// <summary>The nearest mark to the wanted thinner that is not over the product's limit for what was measured.</summary>
    private static long ThinnerSteps(Coat coat, double abMl, double stepMl)
    {
        var limit = coat.Product.Thinner?.LimitFraction ?? 0;
        var wanted = Math.Min(coat.ThinnerFraction, limit) * abMl;
        var nearest = (long)Math.Round(wanted / stepMl, MidpointRounding.AwayFromZero);
        var most = (long)Math.Floor((limit * abMl / stepMl) + 1e-9);
        return Math.Min(nearest, most);
    }
}
