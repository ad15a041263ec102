using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Answers;

/// <summary>The days of one job. Times are the clock on the wall at the site.</summary>
/// <param name="Dated">False: no first day is set; day 1 is a Monday that stands for it.</param>
/// <param name="Zone">IANA name as entered; null: not stated.</param>
public sealed record TimelineAnswer(
    bool Dated, DateOnly Day1, string? Zone, bool Holds, IReadOnlyList<StepOnSiteAnswer> Steps, IReadOnlyList<WaitAnswer> Waits, IReadOnlyList<UseDateAnswer> Use, IReadOnlyList<ReasonAnswer> Reasons);

/// <param name="Coat">From 1; null: no coat.</param>
/// <param name="Source">Id of what its time rests on.</param>
public sealed record StepOnSiteAnswer(SiteStep Step, string Name, string? How, Doer By, int? Coat, int Hands, IReadOnlyList<PartAnswer> Parts, bool Inserted, string Source);

/// <summary>One day's part of a step.</summary>
public sealed record PartAnswer(DateTime From, DateTime To);

/// <param name="After">Place in the steps, from 0, of the one it follows.</param>
/// <param name="Before">Place of the step it holds back.</param>
public sealed record WaitAnswer(string Name, int After, int Before, DateTime From, DateTime Earliest, DateTime? Latest, string Source);

public sealed record UseDateAnswer(UseOf Use, DateTime From, string Origin);

[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, WriteIndented = true)]
[JsonSerializable(typeof(TimelineAnswer))]
public sealed partial class TimelineJson : JsonSerializerContext
{
    /// <param name="voice">Language and units of the words; the times do not change with it.</param>
    public static TimelineAnswer Of(WholeJob whole, Voice voice)
    {
        var t = whole.Timeline;
        return new TimelineAnswer(
            t.IsDated, t.Day1, whole.Job.Timeline.Zone, t.Holds,
            [.. t.Steps.Select(s => new StepOnSiteAnswer(s.Kind, s.Name(voice), s.How?.Invoke(voice), s.By, s.Coat + 1, s.Hands, [.. s.Parts.Select(p => new PartAnswer(p.From, p.To))], s.IsInserted, s.TimeBasis.Source.Id))],
            [.. t.Waits.Select(w => new WaitAnswer(w.Name(voice), w.After, w.Before, w.From, w.Earliest, w.Latest, w.Basis.Source.Id))],
            [.. t.UseDates.Select(u => new UseDateAnswer(u.Use, u.From, Camel(u.Origin.ToString())))],
            [.. t.Reasons.Select(r => new ReasonAnswer(r.Code, Camel(r.Limit.ToString()), r.Text(voice), r.Remedy(voice)))]);
    }

    private static string Camel(string word) => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(word);
}
