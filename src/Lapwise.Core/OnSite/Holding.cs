using Lapwise.Core.Explain;

namespace Lapwise.Core.OnSite;

/// <summary>What stands between a run and its first batch.</summary>
/// <param name="Never">Nothing is mixed against these at all.</param>
/// <param name="AtYourWord">Mixed only after the finisher has given a reason for each, which stays in the record.</param>
/// <param name="Unchecked">Points of the preparation not yet seen to.</param>
public sealed record Hold(IReadOnlyList<IssuedReason> Never, IReadOnlyList<IssuedReason> AtYourWord, IReadOnlyList<PreparationPoint> Unchecked)
{
    public bool MayMix => Never.Count == 0 && AtYourWord.Count == 0 && Unchecked.Count == 0;
}

/// <summary>A reason that a finisher can give for going on against a limit that is theirs to overrule.</summary>
public sealed record GivenReason(string Id, Phrase Text);

public static class Holding
{
    public static Hold Of(Run run) => new(
        [.. run.Plan.Against.Where(a => a.Limit is Limit.Never)],
        [.. run.Plan.Against.Where(a => a.Limit is Limit.AtYourWord && !run.TakenUp.ContainsKey(a.Code))],
        [.. Preparation.All.Where(p => !run.Checked.Contains(p.Id))]);

    /// <summary>Reasons to tap; what is tapped is kept in the words it was shown in.</summary>
    public static IReadOnlyList<GivenReason> Reasons { get; } =
    [
        new("measuredAgain", v => v.Say("I measured again here and it is within the limit", "Lo medí otra vez aquí y está dentro del límite")),
        new("makerAgreed", v => v.Say("The maker of the product agreed to it", "El fabricante del producto lo aceptó")),
        new("triedOnBoard", v => v.Say("I tried it on a board in this room", "Lo probé en una placa en esta sala")),
        new("ownRisk", v => v.Say("I know what may show and do it all the same", "Sé lo que puede verse y lo hago de todos modos")),
    ];
}
