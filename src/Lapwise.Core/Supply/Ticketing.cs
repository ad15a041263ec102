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
        var mostMl = Consumption.Of(coat, tools).LargestBatchMl;

        var cup = ReadableMarks.Find(wantedMl, shareA, tools.CupStepMl, tools.CupStepMl, mostMl);
        var (aMl, bMl) = (cup.StepsA * tools.CupStepMl, cup.StepsB * tools.CupStepMl);

        var (stepAMl, stepBMl) = (tools.ScaleStepG / product.DensityAGPerMl, tools.ScaleStepG / product.DensityBGPerMl);
        var scale = ReadableMarks.Find(wantedMl, shareA, stepAMl, stepBMl, mostMl);
        var (weighedAMl, weighedBMl) = (scale.StepsA * stepAMl, scale.StepsB * stepBMl);

        return new BatchTicket(
            batch,
            wantedMl,
            aMl,
            bMl,
            ThinnerSteps(coat, aMl + bMl, tools.CupStepMl) * tools.CupStepMl,
            scale.StepsA * tools.ScaleStepG,
            scale.StepsB * tools.ScaleStepG,
            product.Thinner is { } thinner
                ? ThinnerSteps(coat, weighedAMl + weighedBMl, tools.ScaleStepG / thinner.DensityGPerMl) * tools.ScaleStepG
                : 0,
            ReadableMarks.RatioError(aMl, bMl, shareA),
            ReadableMarks.RatioError(weighedAMl, weighedBMl, shareA));
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
