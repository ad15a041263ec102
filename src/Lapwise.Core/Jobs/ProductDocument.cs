using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>A coating as its data sheet gives it. Quantities stay as written.</summary>
public sealed record ProductDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The name a job calls it by.</summary>
    public string Id { get; set; } = "";
    /// <summary>The name shown.</summary>
    public string Name { get; set; } = "";
    /// <summary>Mix ratio.</summary>
    public MixDocument Mix { get; set; } = new();
    /// <summary>Density of A, as <c>1.05 g/mL</c> or <c>8.8 lb/gal</c>.</summary>
    public Entry DensityA { get; set; } = "";
    /// <summary>Density of B, as <c>1.10 g/mL</c> or <c>9.2 lb/gal</c>.</summary>
    public Entry DensityB { get; set; } = "";
    /// <summary>Density of C, of a three-part product.</summary>
    public Entry? DensityC { get; set; }
    /// <summary>Share of the mix, without thinner, that stays as dry film.</summary>
    public Entry VolumeSolids { get; set; } = "";
    /// <summary>The permitted thinner; left out: none may be added.</summary>
    public ThinnerDocument? Thinner { get; set; }
    /// <summary>Wet film range the sheet asks for.</summary>
    public WetFilmDocument WetFilm { get; set; } = new();
    /// <summary>Thickest wet film a vertical face holds without sagging (test named by ASTM D4400).</summary>
    public Entry? SagLimit { get; set; }
    /// <summary>One or two points; two fix the temperature law, one takes the stated default.</summary>
    public IReadOnlyList<TimeAtDocument> PotLife { get; set; } = [];
    /// <summary>Pot lives that say the mass they hold for, as 100 g at 25 °C; left out: no effect of the mass is claimed.</summary>
    public IReadOnlyList<MassLifeDocument>? PotLifeOfMass { get; set; }
    /// <summary>Heat of the whole reaction for each gram of mix, as <c>350 J/g</c>; left out: a stated default.</summary>
    public Entry? HeatOfMix { get; set; }
    /// <summary>Temperature at which a batch that overheats is done; left out: a cautious figure.</summary>
    public Entry? HottestMix { get; set; }
    /// <summary>Wait between mixing and first use; left out: none.</summary>
    public Entry? Induction { get; set; }
    /// <summary>How long the film takes a lap: one or two points, as for pot life.</summary>
    public IReadOnlyList<TimeAtDocument> OpenTime { get; set; } = [];
    /// <summary>How the film closes; left out: no effect of humidity, air or thickness on the open time is claimed.</summary>
    public DryingDocument? Drying { get; set; }
    /// <summary>When a light touch leaves no mark (dry-to-touch of ASTM D1640).</summary>
    public TimeAtDocument? DryToTouch { get; set; }
    /// <summary>Window for the next coat without sanding.</summary>
    public RecoatDocument? Recoat { get; set; }
    /// <summary>When the finished surface may be used.</summary>
    public UsableFromDocument? UsableFrom { get; set; }
    /// <summary>The room it may be applied in.</summary>
    public LimitsDocument Limits { get; set; } = new();
    /// <summary>What must be stirred before measuring, in the sheet's words; left out: nothing settles.</summary>
    public string? StirFirst { get; set; }
    /// <summary>What the mix is strained through before use, in the sheet's words, as <c>a fine paint strainer</c>; left out: it is not.</summary>
    public string? Strain { get; set; }
    /// <summary>How it is applied.</summary>
    public ApplicationMethod Method { get; set; } = ApplicationMethod.Rolled;
    /// <summary>Poured: what is done when after the pour.</summary>
    public PourDocument? Pour { get; set; }
    /// <summary>Each face is done as a whole, without a lap on it, as some decorative bases ask; left out: laps are allowed.</summary>
    public bool? WholeTopAtOnce { get; set; }
    /// <summary>Whether a planned break may cross a top in this coat; left out: it may.</summary>
    public bool? BreakAllowed { get; set; }
    /// <summary>How a mixed batch ends.</summary>
    public EndOfPotLife EndsBy { get; set; } = EndOfPotLife.Gels;
    /// <summary>Largest amount to mix at one time, A and B together; left out: the sheet gives none.</summary>
    public Entry? LargestBatch { get; set; }
    /// <summary>The packs it is sold in.</summary>
    public IReadOnlyList<KitDocument> Kits { get; set; } = [];
    /// <summary>What its safety data sheet warns of.</summary>
    public IReadOnlyList<Hazard> Hazards { get; set; } = [];
    /// <summary>Hazard statements of its own label, as <c>[H225, H317]</c>; left out: the usual ones for its hazards.</summary>
    public IReadOnlyList<string>? Label { get; set; }
    /// <summary>Volatile organic compounds of each part; left out: no VOC is worked out.</summary>
    public VocDocument? Voc { get; set; }
    /// <summary>What most of its vapour is; left out: no exposure is worked out.</summary>
    public SolventName? Solvent { get; set; }
    /// <summary>What earlier jobs really took; left out: none is known.</summary>
    public IReadOnlyList<MeasuredUseDocument>? MeasuredUse { get; set; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<MixBasis>))]
public enum MixBasis { Volume, Mass }

/// <summary>Parts of A to parts of B, and to parts of C of a three-part product.</summary>
public sealed record MixDocument
{
    /// <summary>Whether the parts are measured by volume or by mass.</summary>
    public MixBasis By { get; set; } = MixBasis.Volume;
    /// <summary>Parts of A, more than 0.</summary>
    public double A { get; set; }
    /// <summary>Parts of B, more than 0.</summary>
    public double B { get; set; }
    /// <summary>Parts of C, more than 0; left out: a two-part product.</summary>
    public double? C { get; set; }
}

public sealed record ThinnerDocument
{
    /// <summary>What it is.</summary>
    public string Name { get; set; } = "";
    /// <summary>Most that may be added, as a share of A and B together.</summary>
    public Entry Limit { get; set; } = "";
    /// <summary>Its density; left out: that of water.</summary>
    public Entry? Density { get; set; }
    /// <summary>What it counts as in VOC; left out: solvent.</summary>
    public ThinnerKind? Is { get; set; }
}

/// <summary>What a thinner counts as in VOC.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<ThinnerKind>))]
public enum ThinnerKind
{
    Water,
    /// <summary>All of it is VOC.</summary>
    Solvent,
    /// <summary>A solvent that rules leave out of VOC, such as acetone.</summary>
    Exempt,
}

/// <summary>Solvents with limits by name.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<SolventName>))]
public enum SolventName { Acetone, Isopropanol, Ethanol, Xylene, ButylAcetate, Mek }

/// <summary>Volatile organic compounds of the parts, as each stands in its container.</summary>
public sealed record VocDocument
{
    /// <summary>Of A.</summary>
    public VocPartDocument A { get; set; } = new();
    /// <summary>Of B; left out: none.</summary>
    public VocPartDocument? B { get; set; }
    /// <summary>Of C; left out: none.</summary>
    public VocPartDocument? C { get; set; }
}

public sealed record VocPartDocument
{
    /// <summary>VOC in a volume of it, water and exempt solvent counted as volume, as <c>120 g/L</c>.</summary>
    public Entry Voc { get; set; } = "";
    /// <summary>Water, share of its volume; left out: none.</summary>
    public Entry? Water { get; set; }
    /// <summary>Exempt solvent, share of its volume; left out: none.</summary>
    public Entry? Exempt { get; set; }
}

/// <summary>What one earlier coat really took.</summary>
public sealed record MeasuredUseDocument
{
    /// <summary>Film area it covered.</summary>
    public Entry Area { get; set; } = "";
    /// <summary>Wet film it was put on at.</summary>
    public Entry WetFilm { get; set; } = "";
    /// <summary>All parts mixed for it, thinner left out of account.</summary>
    public Entry Used { get; set; } = "";
}

public sealed record WetFilmDocument
{
    /// <summary>Thinnest wet film.</summary>
    public Entry Least { get; set; } = "";
    /// <summary>Thickest wet film.</summary>
    public Entry Most { get; set; } = "";
}

/// <summary>A time at a temperature.</summary>
public sealed record TimeAtDocument
{
    /// <summary>The time, as <c>45 min</c>.</summary>
    public Entry Time { get; set; } = "";
    /// <summary>The temperature it holds at.</summary>
    public Entry At { get; set; } = "";
}

/// <summary>A pot life of a stated mass.</summary>
public sealed record MassLifeDocument
{
    /// <summary>Mass of A and B mixed, as <c>100 g</c>.</summary>
    public Entry Mass { get; set; } = "";
    /// <summary>The time, as <c>45 min</c>.</summary>
    public Entry Time { get; set; } = "";
    /// <summary>Temperature of the material and the room at the start.</summary>
    public Entry At { get; set; } = "";
}

/// <summary>How a film closes: by what leaves it, and by what reacts in it.</summary>
public sealed record DryingDocument
{
    /// <summary>What leaves the film.</summary>
    public Carrier Carrier { get; set; } = Carrier.Water;
    /// <summary>Share of the open time's progress that is evaporation; the rest is reaction.</summary>
    public Entry Evaporation { get; set; } = "";
    /// <summary>Humidity that the data sheet's times hold at; left out: 50 %.</summary>
    public Entry? Humidity { get; set; }
}

/// <summary>What leaves a film as it dries.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Carrier>))]
public enum Carrier
{
    /// <summary>Slower the more humid the air.</summary>
    Water,
    /// <summary>Humidity does not hold it back.</summary>
    Solvent,
}

public sealed record RecoatDocument
{
    /// <summary>Shortest wait before the next coat.</summary>
    public Entry Earliest { get; set; } = "";
    /// <summary>Longest wait; after it the film is sanded first.</summary>
    public Entry Latest { get; set; } = "";
    /// <summary>The temperature both hold at.</summary>
    public Entry At { get; set; } = "";
    /// <summary>How the film is sanded before the next coat, in the sheet's words, as <c>320 grit, dull all over</c>.</summary>
    public string? Sanding { get; set; }
    /// <summary>True where the sheet asks for sanding before every next coat, within the window too.</summary>
    public bool? AlwaysSand { get; set; }
}

public sealed record UsableFromDocument
{
    /// <summary>Light use.</summary>
    public Entry LightUse { get; set; } = "";
    /// <summary>Standing water.</summary>
    public Entry? Water { get; set; }
    /// <summary>Full use.</summary>
    public Entry FullUse { get; set; } = "";
    /// <summary>Full cure: when it no longer hardens; left out: the sheet does not say.</summary>
    public Entry? FullCure { get; set; }
    /// <summary>The temperature all three hold at; left out: 23 °C.</summary>
    public Entry? At { get; set; }
}

public sealed record LimitsDocument
{
    /// <summary>Coldest air.</summary>
    public Entry AirLeast { get; set; } = "";
    /// <summary>Warmest air.</summary>
    public Entry AirMost { get; set; } = "";
    /// <summary>Coldest surface; left out: as the air.</summary>
    public Entry? SurfaceLeast { get; set; }
    /// <summary>Warmest surface; left out: as the air.</summary>
    public Entry? SurfaceMost { get; set; }
    /// <summary>Highest relative humidity.</summary>
    public Entry HumidityMost { get; set; } = "";
    /// <summary>How far the surface must stay above the dew point; left out: 3 °C.</summary>
    public Entry? DewMargin { get; set; }
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

/// <summary>What a poured coat asks for after the pour. Times count from when a pour lies spread.</summary>
public sealed record PourDocument
{
    /// <summary>By when the pour is levelled.</summary>
    public Entry? LevelWithin { get; set; }
    /// <summary>When bubbles are brought out, in rising order, as <c>[10 min, 25 min]</c>.</summary>
    public IReadOnlyList<Entry>? BubblePassesAt { get; set; }
    /// <summary>When drips under the open edges are scraped off.</summary>
    public SpanDocument? ScrapeDrips { get; set; }
}

/// <summary>A span of time with its beginning and its end.</summary>
public sealed record SpanDocument
{
    /// <summary>Not before.</summary>
    public Entry From { get; set; } = "";
    /// <summary>Not after.</summary>
    public Entry To { get; set; } = "";
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
    /// <summary>All parts together, at the mix ratio.</summary>
    public Entry Size { get; set; } = "";
    /// <summary>Price of one kit.</summary>
    public decimal Price { get; set; }
    /// <summary>Currency of the price (ISO 4217), as <c>USD</c>; left out: the shop's own.</summary>
    public string? Currency { get; set; }
}
