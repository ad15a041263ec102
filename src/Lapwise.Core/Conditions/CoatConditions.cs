using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Conditions.Exotherm;
using Lapwise.Core.Conditions.Vapour;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Conditions;

/// <summary>The room judged for every coat.</summary>
public sealed record JobConditions(double DewPointC, Basis DewPointBasis, IReadOnlyList<CoatConditions> Coats);

/// <summary>May this coat go on in this room, and how long does it give.</summary>
/// <param name="DewMarginC">Surface temperature less dew point.</param>
/// <param name="Reasons">Every limit that is broken or near, hardest first; empty: nothing speaks against it.</param>
public sealed record CoatConditions(
    Coat Coat,
    double DewMarginC,
    Basis DewMarginBasis,
    OpenTime OpenTime,
    Basis OpenTimeBasis,
    PotLife PotLife,
    Basis PotLifeBasis,
    IReadOnlyList<Reason> Reasons)
{
    /// <summary>What the age of a batch takes off the open time.</summary>
    public required BatchAgeing Ageing { get; init; }

    /// <summary>The largest batch that may be mixed, through its own heat; null: no effect of the mass is claimed.</summary>
    public BatchHeat? LargestBatch { get; init; }

    /// <summary>Vapour of its wipe and of the coat, as far as sheet and room are known.</summary>
    public IReadOnlyList<CoatVapour> Vapours { get; init; } = [];

    /// <summary>No limit is broken; notes may remain.</summary>
    public bool MayCoat => Reasons.All(r => r.Limit == Limit.Note);
}
