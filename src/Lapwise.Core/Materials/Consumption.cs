using Lapwise.Core.Jobs;

namespace Lapwise.Core.Materials;

/// <summary>
/// What one coat takes for each square metre, and what the tools keep for each person, batch and edge.
/// The estimate and the plan's batches both count with it, so their sums agree. Volumes in mL of A and B without thinner.
/// </summary>
/// <param name="SpreadMlPerM2">A and B in one square metre of film.</param>
/// <param name="RollerMlPerPerson">What one nap holds and does not give back, once a coat. A brush or pad counts as a nap.</param>
/// <param name="TrayMlPerPerson">What stays in one tray, once a coat.</param>
/// <param name="CupMlPerBatch">What stays in the cup of each batch.</param>
/// <param name="EdgeShare">Share lost of what goes on nosings, rims and returns.</param>
/// <param name="RunOffMlPerM">What runs off each metre of open edge of a poured coat.</param>
/// <param name="RoughMlPerM2">What fills the roughness of a square metre before any film stands over it.</param>
/// <param name="LargestBatchMl">Most A and B that may be mixed at one time: the smaller of container and product.</param>
public sealed record Consumption(
    double SpreadMlPerM2,
    double RollerMlPerPerson,
    double TrayMlPerPerson,
    double CupMlPerBatch,
    double EdgeShare,
    double RunOffMlPerM,
    double RoughMlPerM2,
    double LargestBatchMl)
{
    public static Consumption Of(Coat coat, Tools tools)
    {
        var thinned = 1 + coat.ThinnerFraction;
        var spread = Film.SpreadMlPerM2(coat.WetFilm, coat.ThinnerFraction);
        // The container holds thinned material; a product's own limit is given for A and B.
        var largest = Math.Min(tools.LargestBatchMl / thinned, coat.Product.LargestBatchMl ?? double.PositiveInfinity);
        // Tools keep thinned material back too, of which only this part was bought as A and B.
        var cup = tools.CupResidueMl / thinned;
        var rough = Film.RoughnessMlPerM2(coat.RoughnessUm) / thinned;

        return coat.Product.Method is ApplicationMethod.Poured
            ? new Consumption(spread, 0, 0, cup, 0, spread * tools.RunOffWidthM, rough, largest)
            : new Consumption(spread, tools.RollerChargeMl / thinned, tools.TrayResidueMl / thinned, cup, tools.EdgeLossFraction, 0, rough, largest);
    }

    /// <summary>Lost once for each person who rolls the coat.</summary>
    public double PerPersonMl => RollerMlPerPerson + TrayMlPerPerson;

    /// <summary>False where a full batch would stay in its cup: then no number of batches is enough.</summary>
    public bool BatchesPay => LargestBatchMl > CupMlPerBatch;

    /// <summary>What a film area takes. For a section give <c>FilmM2</c>, which counts its strips.</summary>
    public double NetMl(double filmM2) => filmM2 * SpreadMlPerM2;

    /// <summary>What fills the roughness under a film area.</summary>
    public double RoughMl(double filmM2) => filmM2 * RoughMlPerM2;

    /// <summary>What is lost along strips. For a section give <c>FilmM2 − FaceM2</c> and <c>EdgeM</c>.</summary>
    public double EdgeLossMl(double stripM2, double stripM) => (stripM2 * SpreadMlPerM2 * EdgeShare) + (stripM * RunOffMlPerM);

    /// <summary>The fewest batches that bring a volume to the top, each leaving its residue in the cup.</summary>
    public int BatchesFor(double mlBeforeCups)
    {
        if (mlBeforeCups <= 0 || !BatchesPay) return 0;
        // A batch filled to the brim but for rounding dust is one batch, not two.
        return (int)Math.Clamp(Math.Ceiling((mlBeforeCups / (LargestBatchMl - CupMlPerBatch)) - 1e-9), 1, int.MaxValue);
    }
}
