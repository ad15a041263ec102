using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Materials;

/// <summary>Material for every coat of a job.</summary>
public sealed record JobMaterials(IReadOnlyList<CoatMaterial> Coats);

/// <summary>
/// Material for one coat. All volumes in mL; net, loss and need count A and B without thinner.
/// </summary>
/// <param name="AreaM2">Film area of the coat.</param>
/// <param name="SpreadMlPerM2">A and B that one square metre of film takes: WFT / (1 + thinner fraction).</param>
/// <param name="Losses">Each loss by name; they sum to <see cref="LossMl"/>.</param>
/// <param name="Batches">Batches this estimate counts with: as many as the largest batch makes necessary.</param>
public sealed record CoatMaterial(
    Coat Coat,
    double AreaM2,
    double SpreadMlPerM2,
    DryFilm DryFilm,
    double NetMl,
    IReadOnlyList<Loss> Losses,
    double ThinnerMl,
    int Batches,
    IReadOnlyList<Reason> Reasons,
    Basis Basis)
{
    /// <summary>VOC as applied, with the thinner; null: the sheet as entered gives none.</summary>
    public Voc? Voc { get; init; }

    /// <summary>Where the VOC comes from.</summary>
    public Basis? VocBasis { get; init; }

    public double LossMl => Losses.Sum(l => l.Ml);
    public double NeedMl => NetMl + LossMl;
}

public enum LossKind
{
    RollerCharge,
    TrayResidue,
    CupResidue,
    EdgePass,
    RunOff,
    /// <summary>Fills the roughness under the film.</summary>
    Roughness,
    /// <summary>What earlier jobs really took beyond all of these: kept in reserve, and not mixed until it is missing.</summary>
    MeasuredUse,
}

public sealed record Loss(LossKind Kind, double Ml);
