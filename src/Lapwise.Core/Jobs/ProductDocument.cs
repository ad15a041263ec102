using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>A coating as its data sheet gives it. Quantities stay as written.</summary>
public sealed record ProductDocument
{
    public const int CurrentVersion = 1;

    public int Lapwise { get; init; } = CurrentVersion;
    public string Id { get; init; } = "";
    public string Name { get; init; } = "";
    public MixDocument Mix { get; init; } = new();
    /// <summary>Density of A, B, as <c>1.05 g/mL</c> or <c>8.8 lb/gal</c>.</summary>
    public Entry DensityA { get; init; } = "";
    public Entry DensityB { get; init; } = "";
    public Entry VolumeSolids { get; init; } = "";
    public ThinnerDocument? Thinner { get; init; }
    public WetFilmDocument WetFilm { get; init; } = new();
    /// <summary>Thickest wet film a vertical face holds without sagging (test named by ASTM D4400).</summary>
    public Entry? SagLimit { get; init; }
    /// <summary>One or two points; two fix the temperature law, one takes the stated default.</summary>
    public IReadOnlyList<TimeAtDocument> PotLife { get; init; } = [];
    public IReadOnlyList<TimeAtDocument> OpenTime { get; init; } = [];
    public RecoatDocument? Recoat { get; init; }
    public UsableFromDocument? UsableFrom { get; init; }
    public LimitsDocument Limits { get; init; } = new();
    /// <summary>What must be stirred before measuring, in the sheet's words; left out: nothing settles.</summary>
    public string? StirFirst { get; init; }
    public ApplicationMethod Method { get; init; } = ApplicationMethod.Rolled;
    public EndOfPotLife EndsBy { get; init; } = EndOfPotLife.Gels;
    public Entry? LargestBatch { get; init; }
    public IReadOnlyList<KitDocument> Kits { get; init; } = [];
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];
}

[JsonConverter(typeof(CamelCaseEnumConverter<MixBasis>))]
public enum MixBasis { Volume, Mass }

/// <summary>Parts of A to parts of B.</summary>
public sealed record MixDocument
{
    public MixBasis By { get; init; } = MixBasis.Volume;
    public double A { get; init; }
    public double B { get; init; }
}

public sealed record ThinnerDocument
{
    public string Name { get; init; } = "";
    /// <summary>Most that may be added, as a share of A and B together.</summary>
    public Entry Limit { get; init; } = "";
    public Entry? Density { get; init; }
}

public sealed record WetFilmDocument
{
    public Entry Least { get; init; } = "";
    public Entry Most { get; init; } = "";
}

/// <summary>A time at a temperature.</summary>
public sealed record TimeAtDocument
{
    public Entry Time { get; init; } = "";
    public Entry At { get; init; } = "";
}

public sealed record RecoatDocument
{
    public Entry Earliest { get; init; } = "";
    public Entry Latest { get; init; } = "";
    public Entry At { get; init; } = "";
}

public sealed record UsableFromDocument
{
    public Entry LightUse { get; init; } = "";
    public Entry? Water { get; init; }
    public Entry FullUse { get; init; } = "";
}

public sealed record LimitsDocument
{
    public Entry AirLeast { get; init; } = "";
    public Entry AirMost { get; init; } = "";
    public Entry HumidityMost { get; init; } = "";
    /// <summary>How far the surface must stay above the dew point; left out: 3 °C.</summary>
    public Entry? DewMargin { get; init; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<ApplicationMethod>))]
public enum ApplicationMethod
{
    /// <summary>Rolled wet, then dry, section by section.</summary>
    Rolled,
    /// <summary>Poured and levelled over the whole top at once.</summary>
    Poured,
    /// <summary>Brushed or wiped.</summary>
    Wiped,
}

/// <summary>How a mixed batch ends.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<EndOfPotLife>))]
public enum EndOfPotLife
{
    Gels,
    Overheats,
    /// <summary>Looks usable and is not: only the clock tells.</summary>
    Hidden,
}

public sealed record KitDocument
{
    /// <summary>A and B together.</summary>
    public Entry Size { get; init; } = "";
    public decimal Price { get; init; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<Hazard>))]
public enum Hazard { Isocyanate, EpoxyAmine, FlammableVapour, SolventVapour, HotMix, SandingDust, SkinSensitiser }
