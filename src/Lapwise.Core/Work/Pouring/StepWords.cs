using Lapwise.Core.Explain;

namespace Lapwise.Core.Work.Pouring;

/// <summary>How the steps of a poured coat are told, the same on every screen and sheet.</summary>
public static class StepWords
{
    /// <summary>What is done, and to what.</summary>
    public static string What(TimedStep step, Voice v)
    {
        var sections = string.Join(", ", step.Sections);
        return step.Kind switch
        {
            StepKind.Pour => v.Say($"pour and spread {sections}", $"verter y extender {sections}"),
            StepKind.Level => v.Say($"level {sections}", $"nivelar {sections}"),
            StepKind.Brush => v.Say($"brush {sections}, top down", $"dar a brocha {sections}, de arriba abajo"),
            StepKind.BubblePass => v.Say($"bubble pass over {sections}", $"pasada contra burbujas en {sections}"),
            StepKind.ScrapeDrips => v.Say("scrape the drips off the open edges", "raspar las gotas de los cantos libres"),
            _ => throw new ArgumentOutOfRangeException(nameof(step)),
        };
    }

    /// <summary>When the product asks for it; a dash where it asks nothing.</summary>
    public static string When(TimedStep step, Voice v) => step switch
    {
        { ToMs: null } => "–",
        { Kind: StepKind.BubblePass } => v.Say($"at {Clock(step.FromMs)}", $"a los {Clock(step.FromMs)}"),
        { Kind: StepKind.ScrapeDrips } => $"{Clock(step.FromMs)}–{Clock(step.ToMs.Value)}",
        _ => v.Say($"by {Clock(step.ToMs.Value)}", $"hasta {Clock(step.ToMs.Value)}"),
    };

    private static string Clock(long ms) => Voice.Clock(ms / 1000.0);
}
