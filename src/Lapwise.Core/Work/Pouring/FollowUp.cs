namespace Lapwise.Core.Work.Pouring;

/// <summary>What the product asks for after a pour, at its own time: a bubble pass, or scraping off the drips.</summary>
/// <param name="Sections">What it is done to, by index over all tops.</param>
/// <param name="NotBeforeMs">When it can be begun: when the product asks for it, and the pour is levelled.</param>
/// <param name="TakesMs">By number in the crew.</param>
internal sealed record FollowUp(StepKind Kind, string Top, IReadOnlyList<int> Sections, long FromMs, long ToMs, long NotBeforeMs, IReadOnlyList<long> TakesMs)
{
    /// <summary>Begun after this, it is too late, whoever does it.</summary>
    public long LatestMs { get; } = Kind is StepKind.BubblePass ? ToMs : ToMs - TakesMs.Max();

    /// <summary>False: it comes too late even with all hands free.</summary>
    public bool CanBeInTime => NotBeforeMs <= LatestMs;
}
