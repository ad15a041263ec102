using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Vapour;

/// <summary>Over what time a limit is averaged.</summary>
public enum LimitTime { WorkingDay, QuarterHour, TenMinuteCeiling, DangerToLife }

/// <summary>One exposure limit as its source prints it.</summary>
/// <param name="Name">The source's own name for it, as OSHA PEL.</param>
/// <param name="MgPerM3">As printed, rounding and all; null where none is.</param>
public sealed record ExposureLimit(string Name, LimitTime Time, double Ppm, double? MgPerM3, Source Source);

/// <summary>A liquid whose vapour matters. The safety data sheet of what is in the can comes first.</summary>
/// <param name="LowerFlammable">Share of the air by volume; null: it does not burn at room temperature.</param>
public sealed record Solvent(
    string Id,
    Phrase Name,
    double GPerMol,
    double GPerMl,
    double? LowerFlammable,
    double? UpperFlammable,
    double? FlashC,
    Source Source,
    IReadOnlyList<ExposureLimit> Limits)
{
    /// <summary>1 ppm in mg/m³ at 25 °C and 1 atm.</summary>
    public double MgPerM3PerPpm => GPerMol / MolarVolume.LAt(25);
}

/// <summary>Volume of a mole of vapour at 1 atm.</summary>
public static class MolarVolume
{
    private const double GasConstant = 8.314462618;
    private const double AtmospherePa = 101_325;

    /// <summary>Litres: 24.15 at 21.1 °C (the 387 ft³ of a pound-mole at 70 °F), 24.47 at 25 °C.</summary>
    public static double LAt(double celsius) => GasConstant * (celsius + 273.15) / AtmospherePa * 1000;
}

/// <summary>The solvents and the hardener monomer known here, with limits by name and source.</summary>
public static class Solvents
{
    public static readonly Solvent Acetone = new("acetone", v => v.Say("acetone", "acetona"), 58.08, 0.791, 0.025, 0.128, -18, Sources.NioshPocketGuide,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 1000, 2400, Sources.OshaZ1),
        new("NIOSH REL", LimitTime.WorkingDay, 250, 590, Sources.NioshPocketGuide),
        new("ACGIH TLV", LimitTime.WorkingDay, 250, null, Sources.AcgihTlv),
        new("ACGIH STEL", LimitTime.QuarterHour, 500, null, Sources.AcgihTlv),
        new("NIOSH IDLH", LimitTime.DangerToLife, 2500, null, Sources.NioshPocketGuide),
    ]);

    public static readonly Solvent Isopropanol = new("isopropanol", v => v.Say("isopropyl alcohol", "alcohol isopropílico"), 60.1, 0.785, 0.020, 0.127, 12, Sources.NioshRecalled,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 400, 980, Sources.NioshRecalled),
        new("NIOSH REL", LimitTime.WorkingDay, 400, 980, Sources.NioshRecalled),
        new("NIOSH STEL", LimitTime.QuarterHour, 500, 1225, Sources.NioshRecalled),
        new("NIOSH IDLH", LimitTime.DangerToLife, 2000, null, Sources.NioshRecalled),
    ]);

    public static readonly Solvent Ethanol = new("ethanol", v => v.Say("ethyl (denatured) alcohol", "alcohol etílico (desnaturalizado)"), 46.07, 0.789, 0.033, 0.19, 13, Sources.NioshRecalled,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 1000, 1900, Sources.NioshRecalled),
        new("NIOSH REL", LimitTime.WorkingDay, 1000, 1900, Sources.NioshRecalled),
        new("NIOSH IDLH", LimitTime.DangerToLife, 3300, null, Sources.NioshRecalled),
    ]);

    public static readonly Solvent Xylene = new("xylene", v => v.Say("xylene", "xileno"), 106.17, 0.864, 0.010, 0.07, 27, Sources.NioshRecalled,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 100, 435, Sources.NioshRecalled),
        new("NIOSH STEL", LimitTime.QuarterHour, 150, 655, Sources.NioshRecalled),
        new("NIOSH IDLH", LimitTime.DangerToLife, 900, null, Sources.NioshRecalled),
    ]);

    public static readonly Solvent ButylAcetate = new("butyl-acetate", v => v.Say("n-butyl acetate", "acetato de n-butilo"), 116.16, 0.882, 0.017, 0.076, 22, Sources.NioshRecalled,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 150, 710, Sources.NioshRecalled),
        new("NIOSH REL", LimitTime.WorkingDay, 150, 710, Sources.NioshRecalled),
        new("NIOSH STEL", LimitTime.QuarterHour, 200, 950, Sources.NioshRecalled),
        new("NIOSH IDLH", LimitTime.DangerToLife, 1700, null, Sources.NioshRecalled),
    ]);

    public static readonly Solvent Mek = new("mek", v => v.Say("methyl ethyl ketone", "metil etil cetona"), 72.11, 0.805, 0.014, 0.114, -9, Sources.NioshRecalled,
    [
        new("OSHA PEL", LimitTime.WorkingDay, 200, 590, Sources.NioshRecalled),
        new("NIOSH STEL", LimitTime.QuarterHour, 300, 885, Sources.NioshRecalled),
        new("NIOSH IDLH", LimitTime.DangerToLife, 3000, null, Sources.NioshRecalled),
    ]);

    /// <summary>Hexamethylene diisocyanate, the monomer of many clear hardeners: harm without smell.</summary>
    public static readonly Solvent Hdi = new("hdi", v => v.Say("HDI (isocyanate hardener monomer)", "HDI (monómero del endurecedor de isocianato)"), 168.2, 1.05, null, null, null, Sources.NioshPocketGuide,
    [
        new("NIOSH REL", LimitTime.WorkingDay, 0.005, 0.035, Sources.NioshPocketGuide),
        new("NIOSH ceiling", LimitTime.TenMinuteCeiling, 0.020, 0.140, Sources.NioshPocketGuide),
        new("ACGIH TLV", LimitTime.WorkingDay, 0.005, 0.034, Sources.AcgihTlv),
    ]);

    public static IReadOnlyList<Solvent> All { get; } = [Acetone, Isopropanol, Ethanol, Xylene, ButylAcetate, Mek, Hdi];

    public static Solvent Of(SolventName name) => name switch
    {
        SolventName.Acetone => Acetone,
        SolventName.Isopropanol => Isopropanol,
        SolventName.Ethanol => Ethanol,
        SolventName.Xylene => Xylene,
        SolventName.ButylAcetate => ButylAcetate,
        SolventName.Mek => Mek,
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
    };

    public static string Say(LimitTime time, Voice v) => time switch
    {
        LimitTime.WorkingDay => v.Say("average of a working day", "media de la jornada"),
        LimitTime.QuarterHour => v.Say("average of 15 min", "media de 15 min"),
        LimitTime.TenMinuteCeiling => v.Say("ceiling, 10 min", "techo, 10 min"),
        LimitTime.DangerToLife => v.Say("immediate danger to life", "peligro inmediato para la vida"),
        _ => throw new ArgumentOutOfRangeException(nameof(time), time, null),
    };
}
