using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Money;

/// <summary>One step of the job with the hands it takes.</summary>
/// <param name="Coat">Place of the coat it belongs to, from 0; null: the job's own.</param>
/// <param name="PersonS">Seconds of all people together.</param>
public sealed record LabourStep(int? Coat, Phrase Name, double PersonS)
{
    /// <summary>Not wanted by the system: a window that is missed puts it in.</summary>
    public bool IsInserted { get; init; }
}

/// <summary>The hours that are paid: every step of the timeline that the crew does.</summary>
public static class Labour
{
    public static IReadOnlyList<LabourStep> Of(JobTimeline timeline) =>
        [.. timeline.Steps.Where(s => s.By == Doer.Crew).Select(s => new LabourStep(s.Coat, s.Name, s.Worked.TotalSeconds * s.Hands) { IsInserted = s.IsInserted })];

    /// <summary>Drives to the house: the days on which the crew does something there.</summary>
    public static int Visits(JobTimeline timeline) =>
        timeline.Steps.Where(s => s.By == Doer.Crew).SelectMany(s => s.Parts).Select(p => p.From.Date).Distinct().Count();

    /// <summary>What a step costs the shop, overhead left out.</summary>
    public static MoneyAmount Cost(LabourStep step, Rates rates) => (rates.LabourPerHour * ((decimal)step.PersonS / 3600)).Rounded();

    /// <summary>What a licensed trade does: its bill is its own.</summary>
    public static IReadOnlyList<PlannedStep> OfTrades(JobTimeline timeline) => [.. timeline.Steps.Where(s => s.By == Doer.Trade)];
}
