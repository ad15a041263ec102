using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>A coating as its data sheet gives it. Quantities stay as written.</summary>
public sealed record ProductDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; init; } = CurrentVersion;
    /// <summary>The name a job calls it by.</summary>
    public string Id { get; init; } = "";
    /// <summary>The name shown.</summary>
    public string Name { get; init; } = "";
    /// <summary>Mix ratio.</summary>
    public MixDocument Mix { get; init; } = new();
    /// <summary>Density of A, as <c>1.05 g/mL</c> or <c>8.8 lb/gal</c>.</summary>
    public Entry DensityA { get; init; } = "";
    /// <summary>Density of B, as <c>1.10 g/mL</c> or <c>9.2 lb/gal</c>.</summary>
    public Entry DensityB { get; init; } = "";
    /// <summary>Share of the mix, without thinner, that stays as dry film.</summary>
    public Entry VolumeSolids { get; init; } = "";
    /// <summary>The permitted thinner; left out: none may be added.</summary>
    public ThinnerDocument? Thinner { get; init; }
    /// <summary>Wet film range the sheet asks for.</summary>
    public WetFilmDocument WetFilm { get; init; } = new();
    /// <summary>Thickest wet film a vertical face holds without sagging (test named by ASTM D4400).</summary>
    public Entry? SagLimit { get; init; }
    /// <summary>One or two points; two fix the temperature law, one takes the stated default.</summary>
    public IReadOnlyList<TimeAtDocument> PotLife { get; init; } = [];
    /// <summary>How long the film takes a lap: one or two points, as for pot life.</summary>
    public IReadOnlyList<TimeAtDocument> OpenTime { get; init; } = [];
    /// <summary>Window for the next coat without sanding.</summary>
    public RecoatDocument? Recoat { get; init; }
    /// <summary>When the finished surface may be used.</summary>
    public UsableFromDocument? UsableFrom { get; init; }
    /// <summary>The room it may be applied in.</summary>
    public LimitsDocument Limits { get; init; } = new();
    /// <summary>What must be stirred before measuring, in the sheet's words; left out: nothing settles.</summary>
    public string? StirFirst { get; init; }
    /// <summary>How it is applied.</summary>
    public ApplicationMethod Method { get; init; } = ApplicationMethod.Rolled;
    /// <summary>How a mixed batch ends.</summary>
    public EndOfPotLife EndsBy { get; init; } = EndOfPotLife.Gels;
    /// <summary>Largest amount to mix at one time, A and B together; left out: the sheet gives none.</summary>
    public Entry? LargestBatch { get; init; }
    /// <summary>The packs it is sold in.</summary>
    public IReadOnlyList<KitDocument> Kits { get; init; } = [];
    /// <summary>What its safety data sheet warns of.</summary>
    public IReadOnlyList<Hazard> Hazards { get; init; } = [];
}

[JsonConverter(typeof(CamelCaseEnumConverter<MixBasis>))]
public enum MixBasis { Volume, Mass }

/// <summary>Parts of A to parts of B.</summary>
public sealed record MixDocument
{
    /// <summary>Whether the parts are measured by volume or by mass.</summary>
    public MixBasis By { get; init; } = MixBasis.Volume;
    /// <summary>Parts of A, more than 0.</summary>
    public double A { get; init; }
    /// <summary>Parts of B, more than 0.</summary>
    public double B { get; init; }
}

public sealed record ThinnerDocument
{
    /// <summary>What it is.</summary>
    public string Name { get; init; } = "";
    /// <summary>Most that may be added, as a share of A and B together.</summary>
    public Entry Limit { get; init; } = "";
    /// <summary>Its density; left out: that of water.</summary>
    public Entry? Density { get; init; }
}

public sealed record WetFilmDocument
{
    /// <summary>Thinnest wet film.</summary>
    public Entry Least { get; init; } = "";
    /// <summary>Thickest wet film.</summary>
    public Entry Most { get; init; } = "";
}

/// <summary>A time at a temperature.</summary>
public sealed record TimeAtDocument
{
    /// <summary>The time, as <c>45 min</c>.</summary>
    public Entry Time { get; init; } = "";
    /// <summary>The temperature it holds at.</summary>
    public Entry At { get; init; } = "";
}

public sealed record RecoatDocument
{
    /// <summary>Shortest wait before the next coat.</summary>
    public Entry Earliest { get; init; } = "";
    /// <summary>Longest wait; after it the film is sanded first.</summary>
    public Entry Latest { get; init; } = "";
    /// <summary>The temperature both hold at.</summary>
    public Entry At { get; init; } = "";
}

public sealed record UsableFromDocument
{
    /// <summary>Light use.</summary>
    public Entry LightUse { get; init; } = "";
    /// <summary>Standing water.</summary>
    public Entry? Water { get; init; }
    /// <summary>Full use.</summary>
    public Entry FullUse { get; init; } = "";
}

public sealed record LimitsDocument
{
    /// <summary>Coldest air.</summary>
    public Entry AirLeast { get; init; } = "";
    /// <summary>Warmest air.</summary>
    public Entry AirMost { get; init; } = "";
    /// <summary>Highest relative humidity.</summary>
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
    /// <summary>Price of one kit, in the shop's own currency.</summary>
    public decimal Price { get; init; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<Hazard>))]
public enum Hazard { Isocyanate, EpoxyAmine, FlammableVapour, SolventVapour, HotMix, SandingDust, SkinSensitiser }
