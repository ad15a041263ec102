using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

// The job after reading: numbers with units, ranges checked. Made only by JobReading.

/// <summary>A job whose every quantity has been read. Lengths in metres, volumes in mL, times in seconds.</summary>
public sealed record Job(
    string Name,
    UnitSystem Units,
    Language Language,
    Room Room,
    IReadOnlyList<Person> Crew,
    IReadOnlyList<Top> Tops,
    IReadOnlyList<Coat> System,
    Tools Tools,
    Aims Aims)
{
    /// <summary>Days and hours.</summary>
    public TimelineAsks Timeline { get; init; } = TimelineAsks.Usual;
}

/// <param name="RelativeHumidity">0 to 1.</param>
public sealed record Room(
    AirTemperature Air,
    double RelativeHumidity,
    AirMovement AirMovement,
    SurfaceTemperature Surface,
    MaterialTemperature Material)
{
    /// <summary>Null: not measured, and no vapour is worked out.</summary>
    public double? VolumeM3 { get; init; }

    /// <summary>Fresh air in an hour, times the room's; 0: closed.</summary>
    public double AirChangesPerHour { get; init; }
}

public sealed record Person(string Name, Pace Pace);

/// <summary>How fast one person works.</summary>
/// <param name="WetOutM2PerS">Area wetted out and levelled in a second.</param>
/// <param name="DryPassM2PerS">Area dry-rolled in a second.</param>
/// <param name="EdgeMPerS">Edge length done in a second.</param>
/// <param name="ReloadS">Fixed part of each section.</param>
/// <param name="WalkS">Walking to another standing place.</param>
/// <param name="MixS">Mixing one batch by hand.</param>
public sealed record Pace(double WetOutM2PerS, double DryPassM2PerS, double EdgeMPerS, double ReloadS, double WalkS, double MixS)
{
    /// <summary>How much it differs from day to day: spread of its logarithm, about the coefficient of variation.</summary>
    public double DaySpread { get; init; } = Defaults.Spread.Day.Value;
}

public sealed record Top(
    string Name,
    double ThicknessM,
    OutlineSpec Outline,
    IReadOnlyDictionary<char, Edge> Edges,
    IReadOnlyList<Cutout> Cutouts,
    IReadOnlyList<BreakLine> Breaks,
    double? DryPassDeg)
{
    /// <summary>Path of this top in the document, for faults found by later phases.</summary>
    public string Path { get; init; } = "";
    /// <summary>What it is made of; null: in doubt.</summary>
    public Substrate? Substrate { get; init; }
    /// <summary>The finisher's own lines between sections; empty: the planner draws them.</summary>
    public IReadOnlyList<SectionLine> SectionLines { get; init; } = [];
}

/// <summary>A straight line between sections, set by the finisher.</summary>
/// <param name="AtM">Where it meets its side, from the side's start.</param>
/// <param name="InM">A place on it, square in from the side: only the part of the top this lies in is cut.</param>
/// <param name="To">Where it runs to on another place of the outline; null: square to its side.</param>
public sealed record SectionLine(char Side, double AtM, double InM, (char Side, double AtM)? To, SectionLineOn On);

/// <summary>An outline as measured, before closing.</summary>
public abstract record OutlineSpec
{
    private OutlineSpec() { }

    public sealed record Rectangle(double LengthM, double DepthM) : OutlineSpec;
    public sealed record L(double LengthM, double DepthM, double RightLegLengthM, double RightLegDepthM) : OutlineSpec;
    public sealed record U(double LengthM, double DepthM, double RightLegLengthM, double RightLegDepthM, double LeftLegLengthM, double LeftLegDepthM) : OutlineSpec;
    public sealed record RoundedRectangle(double LengthM, double DepthM, double RadiusM) : OutlineSpec;
    public sealed record Circle(double DiameterM) : OutlineSpec;
    public sealed record Ellipse(double LengthM, double DepthM) : OutlineSpec;
    public sealed record Walk(IReadOnlyList<WalkedSide> Sides) : OutlineSpec;

    public IReadOnlyList<Diagonal> Diagonals { get; init; } = [];
    /// <summary>Smallest step the tape was read to.</summary>
    public double TapeStepM { get; init; }
}

/// <param name="TurnRad">Turn at the end of the side, clockwise (to the right) positive.</param>
/// <param name="ArcRadiusM">Radius of an arc; null for a straight side.</param>
public sealed record WalkedSide(double LengthM, double TurnRad, double? ArcRadiusM, Bend Bend);

/// <summary>A measured line between the corners where two sides start.</summary>
public sealed record Diagonal(char From, char To, double LengthM);

/// <summary>What one side of an outline is.</summary>
public abstract record Edge
{
    private Edge() { }

    /// <summary>Coated, and a person can stand there.</summary>
    public sealed record Open(Profile Profile) : Edge;
    /// <summary>Neither coated nor a place to stand.</summary>
    public sealed record Wall : Edge;
    /// <summary>A vertical upstand rises from it.</summary>
    public sealed record Splash(double HeightM, double TopWidthM, int CoatedEnds, bool IsJoint) : Edge;
    /// <summary>A vertical panel drops from it; a person can stand there.</summary>
    public sealed record Waterfall(double DropM, double ReturnM, bool IsJoint) : Edge;
}

/// <summary>The shape of an open edge.</summary>
/// <param name="MeasuredWidthM">Only for <see cref="ProfileShape.Measured"/>.</param>
public sealed record Profile(ProfileShape Shape, double RadiusM, double UndersideM, double ReturnM, double MeasuredWidthM);

/// <param name="AlongM">Centre, along side A from its start.</param>
/// <param name="InM">Centre, square from side A into the top.</param>
/// <param name="RimM">Coated width down the hole; 0: not coated.</param>
public sealed record Cutout(string Name, CutoutShape Shape, double LengthM, double DepthM, double RadiusM, double AlongM, double InM, double RimM);

public sealed record BreakLine(char Side, double AtM);

/// <param name="ThinnerFraction">Volume of thinner over volume of A and B.</param>
public sealed record Coat(Product Product, string? Color, WetFilm WetFilm, double ThinnerFraction, OpenTime? TestBoard)
{
    /// <summary>Roughness of what it goes on, peak to valley, µm; 0: smooth.</summary>
    public double RoughnessUm { get; init; }

    /// <summary>Solvent wipe before it; null: none.</summary>
    public Wipe? Wipe { get; init; }

    /// <summary>The first lap of the test board that showed, seconds; null: none did, or it was not noted.</summary>
    public double? TestBoardFirstBadS { get; init; }

    /// <summary>Names of the tops it goes on; empty: all of the job's.</summary>
    public IReadOnlyList<string> OnTops { get; init; } = [];

    public string Path { get; init; } = "";

    public bool GoesOn(string top) => OnTops.Count == 0 || OnTops.Contains(top, StringComparer.OrdinalIgnoreCase);

    public bool SharesNoTop(Coat other) => OnTops.Count > 0 && other.OnTops.Count > 0 && !OnTops.Any(other.GoesOn);

    /// <summary>The product with its colour.</summary>
    public string Name => Named(Product.Name, Color);

    /// <summary>As <see cref="Name"/>, with the tops where it does not go on all of them.</summary>
    public Phrase Title => v => OnTops.Count == 0 ? Name : v.Say($"{Name}, on {v.List(OnTops)}", $"{Name}, en {v.List(OnTops)}");

    public static string Named(string product, string? color) => color is { Length: > 0 } ? $"{product} ({color})" : product;
}

/// <summary>A wipe with solvent.</summary>
/// <param name="OverS">Over what time it evaporates.</param>
public sealed record Wipe(SolventName Solvent, double AmountMl, double OverS);

/// <summary>What the tools keep back, mL; edge loss as a share.</summary>
public sealed record Tools(
    double RollerChargeMl,
    double TrayResidueMl,
    double CupResidueMl,
    double EdgeLossFraction,
    double LargestBatchMl,
    double CupStepMl,
    double ScaleStepG)
{
    /// <summary>A poured film loses at its open edges what a strip of top this wide takes.</summary>
    public double RunOffWidthM { get; init; } = Defaults.Tools.RunOff.Value;
}

/// <param name="MarginShare">Share of the open time to keep in hand.</param>
public sealed record Aims(double MarginShare, double LargestSectionM2, double ReachM)
{
    /// <summary>Most VOC as applied, less water and exempt solvent, g/L; null: no rule is held.</summary>
    public double? VocMostGPerL { get; init; }
}

/// <summary>A coating after reading.</summary>
public sealed record Product(
    string Id,
    string Name,
    MixRatio Mix,
    double DensityAGPerMl,
    double DensityBGPerMl,
    double VolumeSolids,
    Thinner? Thinner,
    WetFilm LeastWetFilm,
    WetFilm MostWetFilm,
    WetFilm? SagLimit,
    IReadOnlyList<TimeAt> PotLife,
    IReadOnlyList<TimeAt> OpenTime,
    Recoat? Recoat,
    UsableFrom? UsableFrom,
    ProductLimits Limits,
    string? StirFirst,
    ApplicationMethod Method,
    EndOfPotLife EndsBy,
    double? LargestBatchMl,
    IReadOnlyList<Kit> Kits,
    IReadOnlyList<Hazard> Hazards)
{
    /// <summary>What is done with the containers before anything is measured out of them; null: nothing is asked for.</summary>
    public Phrase? BeforeMeasuring => StirFirst is { Length: > 0 } first ? v => v.Say($"Before measuring: {first}", $"Antes de medir: {first}") : null;

    /// <summary>Lives of a stated mass; empty: no effect of the mass is claimed.</summary>
    public IReadOnlyList<MassLife> MassLives { get; init; } = [];

    /// <summary>Heat of the whole reaction; null: the stated default.</summary>
    public double? HeatJPerG { get; init; }

    /// <summary>A batch that overheats is done at this temperature.</summary>
    public double HottestMixC { get; init; } = Defaults.HottestMix.Value;

    /// <summary>What stands mixed in its cup grows hot.</summary>
    public bool HeatsItself => EndsBy is EndOfPotLife.Overheats || Hazards.Contains(Hazard.HotMix);

    /// <summary>Wait between mixing and first use.</summary>
    public double InductionS { get; init; }

    /// <summary>How the film closes; null: no effect of humidity, air or thickness is claimed.</summary>
    public Drying? Drying { get; init; }

    public TimeAt? DryToTouch { get; init; }

    /// <summary>Of a three-part product: the density of C.</summary>
    public double DensityCGPerMl { get; init; } = 1;

    /// <summary>A, B and, of a three-part product, C.</summary>
    public Recipe Recipe => new(
    [
        new("A", Mix.PartsAByVolume, DensityAGPerMl),
        new("B", Mix.PartsBByVolume, DensityBGPerMl),
        .. Mix.PartsCByVolume > 0 ? [new MixPart("C", Mix.PartsCByVolume, DensityCGPerMl)] : Array.Empty<MixPart>(),
    ]);

    /// <summary>Density of all parts mixed, without thinner; no change of volume on mixing.</summary>
    public double MixedDensityGPerMl => Recipe.DensityGPerMl;

    /// <summary>VOC of the parts in their order; empty: not given.</summary>
    public IReadOnlyList<PartVoc> Voc { get; init; } = [];

    /// <summary>What most of its vapour is; null: not given.</summary>
    public SolventName? Solvent { get; init; }

    /// <summary>Codes of the hazard statements on its label; empty: not given.</summary>
    public IReadOnlyList<string> Label { get; init; } = [];

    /// <summary>What earlier coats really took.</summary>
    public IReadOnlyList<MeasuredUse> MeasuredUse { get; init; } = [];

    /// <summary>What the mix is strained through before use, in the sheet's words; null: it is not.</summary>
    public string? Strain { get; init; }

    /// <summary>No lap on a face: each is one section.</summary>
    public bool WholeTopAtOnce { get; init; }
    /// <summary>False: planned breaks are passed over in this coat.</summary>
    public bool BreakAllowed { get; init; } = true;
    /// <summary>What follows a pour; nothing for a coat that is not poured.</summary>
    public PourTimes Pour { get; init; } = PourTimes.None;
}

/// <summary>What a poured coat asks for, in seconds from when a pour lies spread.</summary>
/// <param name="LevelWithinS">By when it is levelled; null: the sheet gives no time.</param>
/// <param name="BubblePassesS">When bubbles are brought out, rising.</param>
/// <param name="ScrapeDrips">When drips are scraped off open edges; null: never.</param>
public sealed record PourTimes(double? LevelWithinS, IReadOnlyList<double> BubblePassesS, (double FromS, double ToS)? ScrapeDrips)
{
    public static readonly PourTimes None = new(null, [], null);
}

/// <summary>
/// Parts of A to parts of B by volume, and to parts of C, 0 where there is none; a ratio by mass is turned through the
/// densities when read.
/// </summary>
public sealed record MixRatio(MixBasis EnteredBy, double PartsAByVolume, double PartsBByVolume, double PartsCByVolume = 0);

public sealed record Thinner(string Name, double LimitFraction, double DensityGPerMl)
{
    /// <summary>What it counts as in VOC, and whether it may burn: a solvent until it is said to be water, whatever its density.</summary>
    public ThinnerKind Kind { get; init; } = ThinnerKind.Solvent;
}

/// <summary>VOC of one part as it stands in its container.</summary>
/// <param name="WaterShare">Of its volume.</param>
/// <param name="ExemptShare">Of its volume.</param>
public sealed record PartVoc(double GPerL, double WaterShare, double ExemptShare);

/// <summary>What one earlier coat really took, thinner left out of account.</summary>
public sealed record MeasuredUse(double AreaM2, double WetFilmUm, double UsedMl);
public sealed record TimeAt(double Seconds, double Celsius);
public sealed record Recoat(double EarliestS, double LatestS, double AtCelsius)
{
    /// <summary>How the film is sanded, in the sheet's words; null: not given.</summary>
    public string? Sanding { get; init; }
    /// <summary>The sheet asks for it before every next coat, within the window too.</summary>
    public bool IsAlwaysSanded { get; init; }
}

public sealed record UsableFrom(double LightUseS, double? WaterS, double FullUseS)
{
    /// <summary>The temperature all three hold at.</summary>
    public double AtCelsius { get; init; } = Defaults.SheetTemperature.Value;
    /// <summary>When it no longer hardens; null: not given.</summary>
    public double? FullCureS { get; init; }
}

/// <summary>A pot life of a stated mass, material and room at one temperature.</summary>
public sealed record MassLife(double MassG, double Seconds, double Celsius);

/// <param name="EvaporationShare">Share of the open time's progress that is evaporation, 0 to 1; the rest is reaction.</param>
/// <param name="SheetHumidity">Humidity that the data sheet's times hold at.</param>
public sealed record Drying(Carrier Carrier, double EvaporationShare, double SheetHumidity);
public sealed record ProductLimits(double AirLeastC, double AirMostC, double HumidityMost, double DewMarginC)
{
    /// <summary>Coldest surface; a sheet that names one temperature means the air and what is coated.</summary>
    public double SurfaceLeastC { get; init; } = AirLeastC;
    /// <summary>Warmest surface.</summary>
    public double SurfaceMostC { get; init; } = AirMostC;
}
/// <param name="SizeMl">All parts together, at the mix ratio.</param>
public sealed record Kit(double SizeMl, decimal Price)
{
    /// <summary>Null: the shop's own.</summary>
    public Currency? Currency { get; init; }
}

/// <summary>What reading a document gave: the job as far as it could be read, and every fault.</summary>
/// <param name="Job">
/// The readable part: a top or coat with a fault is left out, so a page can go on showing the rest.
/// Null only where nothing useful could be read. A file is refused on any fault.
/// </param>
public sealed record JobRead(Job? Job, IReadOnlyList<Fault> Faults);
