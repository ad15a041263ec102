using System.Text.Json.Serialization;

namespace Lapwise.Core.Answers;

/// <summary>How a coat's plan fares when the day does not go exactly as planned; the same seed gives the same answer.</summary>
/// <param name="Line">That a line shows anywhere.</param>
/// <param name="BatchOutlivesPot">That some batch is still rolled, or poured and spread, past its pot life.</param>
/// <param name="RunsShort">That the kits to buy do not reach; null where no kits are known.</param>
/// <param name="MedianMarginS">Half of all trials have at least this worst margin.</param>
/// <param name="TwentiethMarginS">Nineteen trials in twenty have at least this worst margin.</param>
/// <param name="FromS">Where the first bin of worst margins begins; zero lies between two bins.</param>
/// <param name="Counts">Trials in each bin.</param>
public sealed record RiskAnswer(
    int Trials, ulong Seed, ChanceAnswer Line, ChanceAnswer BatchOutlivesPot, ChanceAnswer? RunsShort,
    double MedianMarginS, double TwentiethMarginS, double FromS, double BinS, IReadOnlyList<int> Counts, IReadOnlyList<LapRiskAnswer> Laps)
{
    /// <summary>Of a poured coat: that some levelling, bubble pass or scraping comes after its time.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public ChanceAnswer? StepLate { get; init; }
}

/// <summary>A chance from 0 to 1 with the ends of its 95 % interval.</summary>
public sealed record ChanceAnswer(double Share, double Least, double Most);

public sealed record LapRiskAnswer(string A, string B, ChanceAnswer Line);

/// <summary>What would make a plan work, or work better.</summary>
/// <param name="Change">What becomes different in the plan, or why no number can be had.</param>
/// <param name="LapMarginS">What planning it really gave; null: no number can be had.</param>
public sealed record RemedyAnswer(string Code, string Text, string Change, bool KeepsTarget, bool Holds, double? LapMarginS, double? WorstAgeS);
