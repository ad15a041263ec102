using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>Turns a document into a job: every quantity read, every range checked, every fault said with its path.</summary>
public static class JobReading
{
    /// <summary>
    /// Reads as much as can be read. A top or coat with a fault is left out. A coat rests on room, crew, tools and aims:
    /// with a fault in one of these no coat is kept, and a room that was not read stands at NaN, which no page can
    /// mistake for a value. The job is null only for a document of another version.
    /// </summary>
    /// <param name="library">Products known outside the document; those inside it come first.</param>
    public static JobRead Read(JobDocument document, IReadOnlyList<ProductDocument> library)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(library);

        if (DocumentVersion.Refuse("lapwise", document.Lapwise, JobDocument.CurrentVersion) is { } refused) return new JobRead(null, [refused]);

        var fields = new Fields(document.Units);
        var name = fields.Name("name", document.Name);
        var beforeGround = fields.Count;
        var room = ReadRoom(fields, document.Room ?? new RoomDocument());
        var crew = ReadCrew(fields, document.Crew);
        var tools = ReadTools(fields, document.Units, document.Tools ?? new ToolsDocument());
        var aims = ReadAims(fields, document.Aims ?? new AimsDocument());
        var coatsHaveGround = fields.Count == beforeGround;

        var timeline = TimelineReading.Read(fields, document.Timeline);
        var tops = TopReading.ReadAll(fields, document);
        var coats = CoatReading.ReadAll(fields, document, library);

        var job = new Job(name, document.Units, document.Language, room, crew, tops, coatsHaveGround ? coats : [], tools, aims) { Timeline = timeline };
        return new JobRead(job, fields.Faults);
    }

    /// <summary>The products a job could take, each id once, those inside the document first; one with a fault is left out.</summary>
    public static IReadOnlyList<Product> ReadProducts(JobDocument document, IReadOnlyList<ProductDocument> library) =>
    [
        .. (document.Products ?? []).Concat(library).DistinctBy(p => p.Id, StringComparer.Ordinal)
            .Select(p => ProductReading.Read(p, "").Product).OfType<Product>(),
    ];

    private static Room ReadRoom(Fields fields, RoomDocument room) => new(
        new AirTemperature(fields.Temperature("room.air", room.Air, Ranges.RoomTemperature)),
        fields.Humidity("room.humidity", room.Humidity),
        room.AirMovement,
        new SurfaceTemperature(fields.Temperature("room.surface", room.Surface, Ranges.RoomTemperature)),
        new MaterialTemperature(fields.Temperature("room.material", room.Material, Ranges.RoomTemperature)))
    {
        VolumeM3 = Fields.OrNull(room.Volume, e => fields.RoomVolume("room.volume", e) / 1e6),
        AirChangesPerHour = Fields.Or(room.AirChanges, 0, e => fields.Number("room.airChanges", e, Ranges.AirChanges)),
    };

    private static List<Person> ReadCrew(Fields fields, IReadOnlyList<PersonDocument>? crew)
    {
        if (crew is not { Count: > 0 })
        {
            fields.Add("crew", "NobodyInCrew",
                v => v.Say("The crew has nobody in it; at least one person is needed.", "No hay nadie en el equipo; hace falta al menos una persona."),
                v => v.Say("Add yourself.", "Añádase usted."));
        }

        var (people, names) = (new List<Person>(), Fields.NoNames());
        foreach (var (person, path) in fields.Items("crew", crew, Ranges.MostPeople))
        {
            var before = fields.Count;
            var name = fields.UniqueName(path + ".name", person.Name, names);
            var pace = ReadPace(fields, path + ".pace", person.Pace ?? new PaceDocument());
            if (fields.Count == before) people.Add(new Person(name, pace));
        }

        return people;
    }

    private static Pace ReadPace(Fields fields, string path, PaceDocument pace) => new(
        Fields.Or(pace.WetOut, Defaults.Pace.WetOut, e => fields.AreaRate(path + ".wetOut", e, Ranges.AreaPace)),
        Fields.Or(pace.DryPass, Defaults.Pace.DryPass, e => fields.AreaRate(path + ".dryPass", e, Ranges.AreaPace)),
        Fields.Or(pace.Edge, Defaults.Pace.Edge, e => fields.LengthRate(path + ".edge", e, Ranges.LengthPace)),
        Fields.Or(pace.Reload, Defaults.Pace.Reload, e => fields.Time(path + ".reload", e, Ranges.Pause)),
        Fields.Or(pace.Walk, Defaults.Pace.Walk, e => fields.Time(path + ".walk", e, Ranges.Pause)),
        Fields.Or(pace.Mix, Defaults.Pace.Mix, e => fields.Time(path + ".mix", e, Ranges.Pause)))
    {
        DaySpread = Fields.Or(pace.DaySpread, Defaults.Spread.Day, e => fields.Share(path + ".daySpread", e, Ranges.DaySpread)),
    };

    private static Tools ReadTools(Fields fields, UnitSystem units, ToolsDocument tools) => new(
        Fields.Or(tools.RollerCharge, Defaults.Tools.RollerCharge, e => fields.Volume("tools.rollerCharge", e, Ranges.Held)),
        Fields.Or(tools.TrayResidue, Defaults.Tools.TrayResidue, e => fields.Volume("tools.trayResidue", e, Ranges.Held)),
        Fields.Or(tools.CupResidue, Defaults.Tools.CupResidue, e => fields.Volume("tools.cupResidue", e, Ranges.Held)),
        Fields.Or(tools.EdgeLoss, Defaults.Tools.EdgeLoss, e => fields.Share("tools.edgeLoss", e, Ranges.Loss)),
        Fields.Or(tools.LargestBatch, Defaults.Tools.LargestBatch, e => fields.Volume("tools.largestBatch", e, Ranges.BatchVolume)),
        Fields.Or(tools.CupStep, Defaults.Tools.CupStep(units), e => fields.Volume("tools.cupStep", e, Ranges.CupStep)),
        Fields.Or(tools.ScaleStep, Defaults.Tools.ScaleStep, e => fields.Mass("tools.scaleStep", e, Ranges.ScaleStep)))
    {
        RunOffWidthM = Fields.Or(tools.RunOff, Defaults.Tools.RunOff, e => fields.Length("tools.runOff", e, Ranges.Strip)),
    };

    private static Aims ReadAims(Fields fields, AimsDocument aims) => new(
        Fields.Or(aims.MarginShare, Defaults.Aims.MarginShare, e => fields.Share("aims.marginShare", e, Ranges.MarginShare)),
        Fields.Or(aims.LargestSection, Defaults.Aims.LargestSection, e => fields.Area("aims.largestSection", e, Ranges.LargestSection)),
        Fields.Or(aims.Reach, Defaults.Aims.Reach, e => fields.Length("aims.reach", e, Ranges.Reach)))
    {
        VocMostGPerL = Fields.OrNull(aims.VocMost, e => fields.Concentration("aims.vocMost", e, Ranges.VocConcentration) * 1000),
    };
}
