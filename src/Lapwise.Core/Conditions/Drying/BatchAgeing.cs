using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions.Drying;

/// <summary>
/// What the age of a batch takes off the open time of the film rolled from it. What reacts in the film has begun in the
/// cup, so of the batch's age the share that is reaction counts; what evaporates has only begun on the top. At the end of
/// its pot life a batch may still be rolled, so no more counts than leaves nothing then. Where the data sheet gives no
/// shares, half the open time is taken to be left at the end of the pot life.
/// </summary>
/// <param name="Share">Share of the batch's age, from the end of its mixing, that its film no longer stays open; 0 to 1.</param>
/// <param name="IsStated">The product's own shares; false: the stated default.</param>
public sealed record BatchAgeing(double Share, bool IsStated, Basis Basis)
{
    // Pot life ends while a mix can still be rolled; how much open time is left then is common practice, no source.
    private const double LeftAtTheEnd = 0.5;

    public static BatchAgeing Of(Product product, OpenTime open, PotLife life)
    {
        var most = Math.Clamp(open.Seconds / life.Seconds, 0, 1);
        BasisInput[] clocks =
        [
            new(v => v.Say("open time t_o", "tiempo abierto t_o"), _ => Voice.Span(open.Seconds)),
            new(v => v.Say("pot life t_p", "vida de la mezcla t_p"), _ => Voice.Span(life.Seconds)),
        ];
        if (product.Drying is { } drying)
        {
            return new BatchAgeing(Math.Min(1 - drying.EvaporationShare, most), true,
                new Basis("k = min(1 − e; t_o / t_p)",
                    [new(v => v.Say("share of evaporation e", "parte de evaporación e"), v => v.Percent(drying.EvaporationShare)), .. clocks], Sources.AsEntered));
        }

        return new BatchAgeing(most * (1 - LeftAtTheEnd), false,
            new Basis("k = ½ · t_o / t_p",
                [.. clocks, new(v => v.Say("left of the open time at the end of the pot life", "lo que queda de tiempo abierto al final de la vida de la mezcla"), v => v.Percent(LeftAtTheEnd))],
                Sources.CautiousGuess));
    }

    /// <summary>Open time that is gone when film is rolled from a batch mixed so long ago; up to a whole second.</summary>
    public static long UsedMs(double share, long ageMs) => ageMs <= 0 || share <= 0 ? 0 : (long)Math.Ceiling((share * ageMs / 1000) - 1e-9) * 1000;
}
