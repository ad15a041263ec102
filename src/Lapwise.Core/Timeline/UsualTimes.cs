using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Timeline;

/// <summary>What a step takes one pair of hands: a fixed part, a part for each top, a part for each square metre, in seconds.</summary>
internal readonly record struct UsualTime(double FixedS, double PerTopS = 0, double PerM2S = 0)
{
    public double For(int tops, double m2) => FixedS + (PerTopS * tops) + (PerM2S * m2);
}

/// <summary>Times taken where none are entered: common practice, no source. Each can be entered instead.</summary>
internal static class UsualTimes
{
    private const double Minute = 60;

    public static readonly UsualTime TakeOut = new(45 * Minute);
    public static readonly UsualTime PutBack = new(60 * Minute);

    /// <summary>Seconds the filler hardens before it is sanded.</summary>
    public const double FillerS = 2 * 3600;
    /// <summary>A wiped surface is coated before dust settles on it again.</summary>
    public const double WipedS = 30 * Minute;
    /// <summary>Primer to the next coat, at the sheet's usual temperature.</summary>
    public static readonly TimeAt Primer = new(4 * 3600, Defaults.SheetTemperature.Value);
    /// <summary>A bond test is pulled the next day where the sheet gives no recoat.</summary>
    public const double BondTestS = 24 * 3600;
    /// <summary>Where a sheet gives no earliest recoat: cautious.</summary>
    public const double RecoatS = 24 * 3600;
    /// <summary>Where a sheet gives no use: cautious.</summary>
    public static readonly UsableFrom Usable = new(72 * 3600.0, 7 * 86400.0, 14 * 86400.0);

    /// <summary>Hands that can work on a step at once without standing in each other's way.</summary>
    public const int MostHands = 2;

    public static UsualTime Of(SiteStep step) => step switch
    {
        SiteStep.PracticeBoard => new(45 * Minute),
        SiteStep.ProtectRoom => new(60 * Minute, 10 * Minute),
        SiteStep.OldSilicone => new(15 * Minute, 15 * Minute),
        SiteStep.BondTest => new(30 * Minute),
        SiteStep.Clean => new(10 * Minute),
        SiteStep.Repair => new(30 * Minute, 10 * Minute),
        SiteStep.Tent => new(45 * Minute),
        SiteStep.AirOff => new(10 * Minute),
        SiteStep.Mask => new(20 * Minute, 10 * Minute),
        SiteStep.Sand => new(15 * Minute),
        SiteStep.Prime => new(15 * Minute),
        SiteStep.Wipe => new(20 * Minute, 2 * Minute, 1 * Minute),
        SiteStep.SandBetween => new(20 * Minute, 0, 5 * Minute),
        SiteStep.Unmask => new(5 * Minute, 5 * Minute),
        SiteStep.ClearRoom => new(45 * Minute),
        SiteStep.NewCaulk => new(20 * Minute, 15 * Minute),
        SiteStep.TouchUp => new(60 * Minute),
        SiteStep.Handover => new(30 * Minute),
        _ => default,
    };
}
