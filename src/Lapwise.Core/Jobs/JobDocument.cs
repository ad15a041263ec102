using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

// The job as it was entered. Quantities stay as written (Entry); JobReading turns them into a Job or into faults.
// The same shape is the file, the page's storage and the API. Version: JobDocument.CurrentVersion.
// The members are set, not init: generated JSON readers give an init member that is left out null, not its default.
// Treat a document as a value all the same, and change it by "with".

/// <summary>One job, as entered. Everything else is computed from it.</summary>
public sealed record JobDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>The name the customer knows the job by.</summary>
    public string Name { get; set; } = "";
    /// <summary>The units this job is shown and written in; amounts may be entered in any.</summary>
    public UnitSystem Units { get; set; } = UnitSystem.Us;
    /// <summary>The language this job is read in.</summary>
    public Language Language { get; set; } = Language.English;
    /// <summary>The room on the day.</summary>
    public RoomDocument Room { get; set; } = new();
    /// <summary>Who works, at least one.</summary>
    public IReadOnlyList<PersonDocument> Crew { get; set; } = [];
    /// <summary>What is coated.</summary>
    public IReadOnlyList<TopDocument> Tops { get; set; } = [];
    /// <summary>The ordered coats of the job.</summary>
    public IReadOnlyList<CoatDocument> System { get; set; } = [];
    /// <summary>What rollers, trays and cups keep back, and what can be read on cup and scale.</summary>
    public ToolsDocument? Tools { get; set; }
    /// <summary>What the plan is asked to keep.</summary>
    public AimsDocument? Aims { get; set; }
    /// <summary>First day, working hours, days off and what is done around the coats.</summary>
    public TimelineDocument? Timeline { get; set; }
    /// <summary>What is talked over with the customer: options, deposit, changes.</summary>
    public AgreementDocument? Agreement { get; set; }
    /// <summary>Products carried inside the file; looked up before the library.</summary>
    public IReadOnlyList<ProductDocument>? Products { get; set; }
}

/// <summary>The room today. Three temperatures, never one.</summary>
public sealed record RoomDocument
{
    /// <summary>Air temperature: drying follows it.</summary>
    public Entry Air { get; set; } = "";
    /// <summary>Relative humidity of the air, as <c>45 %</c>.</summary>
    public Entry Humidity { get; set; } = "";
    /// <summary>How the air moves over the film.</summary>
    public AirMovement AirMovement { get; set; } = AirMovement.Still;
    /// <summary>Temperature of the top itself.</summary>
    public Entry Surface { get; set; } = "";
    /// <summary>Temperature of the material in its containers.</summary>
    public Entry Material { get; set; } = "";
    /// <summary>Volume of the air in the room, as <c>1440 ft³</c> or <c>40 m³</c>; left out: no vapour is worked out.</summary>
    public Entry? Volume { get; set; }
    /// <summary>How often fresh air from outside replaces that of the room in an hour, as <c>6</c>; left out: the room is closed.</summary>
    public Entry? AirChanges { get; set; }
}

/// <summary>Still: tented or air handling off. Slight: an occupied room. Moving: a fan or air handling on.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<AirMovement>))]
public enum AirMovement { Still, Slight, Moving }

/// <summary>One pair of hands and its pace. A pace left out is the stated default.</summary>
public sealed record PersonDocument
{
    /// <summary>What the person is called on the plan.</summary>
    public string Name { get; set; } = "";
    /// <summary>How fast the person works; left out: the stated default.</summary>
    public PaceDocument? Pace { get; set; }
}

public sealed record PaceDocument
{
    /// <summary>Area wetted out per minute, as <c>6 ft²/min</c>.</summary>
    public Entry? WetOut { get; set; }
    /// <summary>Area dry-rolled per minute.</summary>
    public Entry? DryPass { get; set; }
    /// <summary>Edge and nosing length done per minute, as <c>8 ft/min</c>.</summary>
    public Entry? Edge { get; set; }
    /// <summary>Fixed part of each section: reload and settle, as <c>20 s</c>.</summary>
    public Entry? Reload { get; set; }
    /// <summary>Time to walk to another standing place.</summary>
    public Entry? Walk { get; set; }
    /// <summary>Hand mixing of one batch.</summary>
    public Entry? Mix { get; set; }
    /// <summary>How much this pace differs from day to day, as <c>10 %</c>.</summary>
    public Entry? DaySpread { get; set; }
}

public sealed record TopDocument
{
    /// <summary>What the top is called; unique in the job.</summary>
    public string Name { get; set; } = "";
    /// <summary>Thickness of the top, from which edges take their width.</summary>
    public Entry? Thickness { get; set; }
    /// <summary>What it is made of or covered with, which says how it is prepared; left out: in doubt, so its bond is tested first.</summary>
    public Substrate? Substrate { get; set; }
    /// <summary>The closed boundary, as measured.</summary>
    public OutlineDocument Outline { get; set; } = new();
    /// <summary>One for each side, by the side's letter (A, B, C … in walking order).</summary>
    public IReadOnlyDictionary<string, EdgeDocument> Edges { get; set; } = new Dictionary<string, EdgeDocument>(StringComparer.Ordinal);
    /// <summary>Holes in the top.</summary>
    public IReadOnlyList<CutoutDocument>? Cutouts { get; set; }
    /// <summary>Planned joints straight across the flat.</summary>
    public IReadOnlyList<BreakDocument>? Breaks { get; set; }
    /// <summary>Your own lines between sections, in the order they are cut; left out: the planner draws them.</summary>
    public IReadOnlyList<SectionLineDocument>? SectionLines { get; set; }
    /// <summary>Direction of the dry pass over the flat in degrees from side A; left out: along the top's length.</summary>
    public Entry? DryPass { get; set; }
    /// <summary>Pictures of this top, which lie beside the document.</summary>
    public IReadOnlyList<PhotoDocument>? Photos { get; set; }
}

/// <summary>A picture kept beside the document, by its content.</summary>
public sealed record PhotoDocument
{
    /// <summary>SHA-256 of the JPEG file, as 64 small hexadecimal digits.</summary>
    public string Id { get; set; } = "";
    /// <summary>What it shows, read aloud to who cannot see it.</summary>
    public string? Says { get; set; }
}

/// <summary>Shapes an outline can be entered by.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<OutlineShape>))]
public enum OutlineShape { Rectangle, L, U, RoundedRectangle, Circle, Ellipse, Walk }

/// <summary>
/// A closed boundary. Side letters run in walking order, clockwise seen from above, side A first:
/// rectangle A back (length), B right (depth), C front, D left.
/// </summary>
public sealed record OutlineDocument
{
    /// <summary>How the outline is entered.</summary>
    public OutlineShape Shape { get; set; } = OutlineShape.Rectangle;
    /// <summary>Rectangle, rounded rectangle, ellipse: along A. L, U: the whole back.</summary>
    public Entry? Length { get; set; }
    /// <summary>Rectangle, rounded rectangle, ellipse: along B. L, U: depth of the back run.</summary>
    public Entry? Depth { get; set; }
    /// <summary>L: the right leg, measured along B from the back wall. U: the same for the right leg.</summary>
    public Entry? RightLegLength { get; set; }
    /// <summary>L, U: how deep the right leg is (its width in plan).</summary>
    public Entry? RightLegDepth { get; set; }
    /// <summary>U: the left leg, measured from the back wall.</summary>
    public Entry? LeftLegLength { get; set; }
    /// <summary>U: how deep the left leg is (its width in plan).</summary>
    public Entry? LeftLegDepth { get; set; }
    /// <summary>Rounded rectangle: radius of its corners.</summary>
    public Entry? Radius { get; set; }
    /// <summary>Circle: its diameter.</summary>
    public Entry? Diameter { get; set; }
    /// <summary>Walk: the sides in order.</summary>
    public IReadOnlyList<WalkedSideDocument>? Sides { get; set; }
    /// <summary>Redundant measurements between corners.</summary>
    public IReadOnlyList<DiagonalDocument>? Diagonals { get; set; }
    /// <summary>Smallest step the tape was read to; left out: 1/16 in or 1 mm.</summary>
    public Entry? TapeStep { get; set; }
}

public sealed record WalkedSideDocument
{
    /// <summary>Length of the side; of an arc, along the arc.</summary>
    public Entry Length { get; set; } = "";
    /// <summary>Turn at the end of this side, as <c>right 90</c> or <c>left 45</c>; left out: right 90.</summary>
    public Entry? Turn { get; set; }
    /// <summary>Radius of an arc; left out: a straight side.</summary>
    public Entry? Radius { get; set; }
    /// <summary>Which way an arc bends as one walks it.</summary>
    public Bend? Bend { get; set; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<Bend>))]
public enum Bend { Right, Left }

/// <summary>A measured line between two corners. Corner A is where side A starts.</summary>
public sealed record DiagonalDocument
{
    /// <summary>Letter of the corner measured from; a corner is named for the side that starts there.</summary>
    public string From { get; set; } = "";
    /// <summary>Letter of the corner measured to.</summary>
    public string To { get; set; } = "";
    /// <summary>The length measured.</summary>
    public Entry Length { get; set; } = "";
}

[JsonConverter(typeof(CamelCaseEnumConverter<EdgeKind>))]
public enum EdgeKind { Open, Wall, Splash, Waterfall }

public sealed record EdgeDocument
{
    /// <summary>What the side is.</summary>
    public EdgeKind Kind { get; set; } = EdgeKind.Wall;
    /// <summary>Open: the shape of the edge.</summary>
    public ProfileDocument? Profile { get; set; }
    /// <summary>Splash: height above the flat.</summary>
    public Entry? Height { get; set; }
    /// <summary>Splash: width of its top; coated where given.</summary>
    public Entry? TopWidth { get; set; }
    /// <summary>Splash: how many ends are coated (0, 1 or 2).</summary>
    public int? CoatedEnds { get; set; }
    /// <summary>Waterfall: how far the panel drops below the flat.</summary>
    public Entry? Drop { get; set; }
    /// <summary>Waterfall: width coated round its two free edges.</summary>
    public Entry? Return { get; set; }
    /// <summary>Splash, waterfall: a caulked or taped joint at the fold, so the fold needs no wet lap.</summary>
    public bool? Joint { get; set; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<ProfileShape>))]
public enum ProfileShape
{
    /// <summary>Flat face, arrises only eased.</summary>
    Square,
    /// <summary>Quarter rounds of a radius top and bottom.</summary>
    Eased,
    /// <summary>One quarter round at the top.</summary>
    RoundOver,
    /// <summary>A half circle over the whole thickness: π t / 2.</summary>
    FullRound,
    /// <summary>A flat chamfer of a leg at the top, 45°.</summary>
    Bevel,
    /// <summary>A concave quarter between a step of the radius: cove.</summary>
    Cove,
    /// <summary>Convex quarter over concave quarter: the S shape.</summary>
    Ogee,
    /// <summary>The width was measured round the shape with a strip.</summary>
    Measured,
}

public sealed record ProfileDocument
{
    /// <summary>The shape.</summary>
    public ProfileShape Shape { get; set; } = ProfileShape.Square;
    /// <summary>Radius of the rounds or leg of the bevel.</summary>
    public Entry? Radius { get; set; }
    /// <summary>Coated width under the top.</summary>
    public Entry? Underside { get; set; }
    /// <summary>A build-down or apron below the thickness, coated on its face.</summary>
    public Entry? Return { get; set; }
    /// <summary>Measured: the developed width itself.</summary>
    public Entry? Width { get; set; }
}

[JsonConverter(typeof(CamelCaseEnumConverter<CutoutShape>))]
public enum CutoutShape { Rectangle, RoundedRectangle, Circle, Ellipse }

/// <summary>A hole, placed by its centre: a distance along side A from A's start, and a distance in from side A.</summary>
public sealed record CutoutDocument
{
    /// <summary>What the hole is for.</summary>
    public string Name { get; set; } = "";
    /// <summary>The shape of the hole.</summary>
    public CutoutShape Shape { get; set; } = CutoutShape.Rectangle;
    /// <summary>Size of the hole along side A.</summary>
    public Entry? Length { get; set; }
    /// <summary>Size of the hole square to side A.</summary>
    public Entry? Depth { get; set; }
    /// <summary>Rounded rectangle: radius of its corners.</summary>
    public Entry? Radius { get; set; }
    /// <summary>Circle: its diameter.</summary>
    public Entry? Diameter { get; set; }
    /// <summary>Centre, measured along side A from its start.</summary>
    public Entry Along { get; set; } = "";
    /// <summary>Centre, measured square from side A into the top.</summary>
    public Entry In { get; set; } = "";
    /// <summary>Width coated down into the hole; left out: the rim is not coated.</summary>
    public Entry? Rim { get; set; }
}

/// <summary>A planned joint straight across the flat, square to a side.</summary>
public sealed record BreakDocument
{
    /// <summary>Letter of the side it starts from, square to it.</summary>
    public string Side { get; set; } = "A";
    /// <summary>Distance from the start of that side.</summary>
    public Entry At { get; set; } = "";
}

/// <summary>Which surface a section line cuts.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<SectionLineOn>))]
public enum SectionLineOn
{
    Flat,
    /// <summary>The splash or panel at the side.</summary>
    Upright,
}

/// <summary>A straight line between sections. It ends where it meets a line named before it, or the outline.</summary>
public sealed record SectionLineDocument
{
    /// <summary>Letter of the side it is measured along, square to it.</summary>
    public string Side { get; set; } = "A";
    /// <summary>Distance from the start of that side.</summary>
    public Entry At { get; set; } = "";
    /// <summary>For a line that does not touch its side, as within a row: any place on it, measured square in from the side.</summary>
    public Entry? In { get; set; }
    /// <summary>For a line that is not square to its side: letter of the side it runs to.</summary>
    public string? ToSide { get; set; }
    /// <summary>Where it ends, from the start of the side it runs to.</summary>
    public Entry? To { get; set; }
    /// <summary>The surface it cuts; left out: the flat.</summary>
    public SectionLineOn? On { get; set; }
}

public sealed record CoatDocument
{
    /// <summary>Id of the product.</summary>
    public string Product { get; set; } = "";
    /// <summary>Colour, as the customer and the tin name it.</summary>
    public string? Color { get; set; }
    /// <summary>Names of the tops this coat goes on, as an island in a colour of its own; left out: all of them.</summary>
    public IReadOnlyList<string>? OnTops { get; set; }
    /// <summary>Wet film to apply; left out: the middle of the product's range.</summary>
    public Entry? WetFilm { get; set; }
    /// <summary>Thinner as a share of A and B together, as <c>1 %</c>; left out: none.</summary>
    public Entry? Thinner { get; set; }
    /// <summary>Roughness of what this coat goes on, from peak to valley, as <c>2 mil</c>; left out: smooth.</summary>
    public Entry? Roughness { get; set; }
    /// <summary>Solvent wipe before this coat; left out: none.</summary>
    public WipeDocument? Wipe { get; set; }
    /// <summary>Open time seen on a test board in this room: the last good lap. Replaces the data sheet's.</summary>
    public Entry? TestBoardOpenTime { get; set; }
    /// <summary>The first lap of that test board that showed; with the last good one it is the interval the open time lies in.</summary>
    public Entry? TestBoardFirstBad { get; set; }
}

/// <summary>A wipe with solvent.</summary>
public sealed record WipeDocument
{
    /// <summary>What is wiped with.</summary>
    public SolventName Solvent { get; set; } = SolventName.Acetone;
    /// <summary>How much of it goes on rags and top.</summary>
    public Entry Amount { get; set; } = "";
    /// <summary>Over what time it evaporates; left out: 10 min.</summary>
    public Entry? Over { get; set; }
}

/// <summary>What the tools keep back. Left out: stated defaults, marked as common practice.</summary>
public sealed record ToolsDocument
{
    /// <summary>What one roller nap holds and does not give back.</summary>
    public Entry? RollerCharge { get; set; }
    /// <summary>What stays in the tray.</summary>
    public Entry? TrayResidue { get; set; }
    /// <summary>What stays in each mixing cup.</summary>
    public Entry? CupResidue { get; set; }
    /// <summary>Share lost passing over edges and rims, of what goes on them.</summary>
    public Entry? EdgeLoss { get; set; }
    /// <summary>A poured film loses at its open edges what a strip of top this wide takes.</summary>
    public Entry? RunOff { get; set; }
    /// <summary>Largest batch the container takes.</summary>
    public Entry? LargestBatch { get; set; }
    /// <summary>Smallest step read on the mixing cup.</summary>
    public Entry? CupStep { get; set; }
    /// <summary>Smallest step of the scale.</summary>
    public Entry? ScaleStep { get; set; }
}

public sealed record AimsDocument
{
    /// <summary>Share of the open time to keep in hand; left out: 20 %.</summary>
    public Entry? MarginShare { get; set; }
    /// <summary>Largest section rolled at one time.</summary>
    public Entry? LargestSection { get; set; }
    /// <summary>How far a roller works well from where one stands.</summary>
    public Entry? Reach { get; set; }
    /// <summary>Most VOC that local rules allow as applied, less water and exempt solvent; left out: none is held.</summary>
    public Entry? VocMost { get; set; }
}
