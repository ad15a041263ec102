using System.Globalization;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Quantities;

namespace Lapwise.Core;

/// <summary>What a job holds by now, and what was made of it.</summary>
/// <param name="Faults">Everything in the document that cannot be used.</param>
/// <param name="HasCoatings">There is a coating to choose.</param>
/// <param name="Plan">The plan of the document as it stands; null: it is still being worked out, or cannot be.</param>
public sealed record JobSoFar(JobDocument Document, IReadOnlyList<Fault> Faults, bool HasCoatings, JobConditions? Conditions, WholeJob? Plan);

/// <summary>What kind of thing comes next.</summary>
public enum Deed
{
    /// <summary>The first top is added.</summary>
    AddTop,
    /// <summary>A value that is still blank is typed.</summary>
    TypeIn,
    /// <summary>What was typed cannot be used.</summary>
    PutRight,
    /// <summary>No side says where one can stand.</summary>
    OpenASide,
    /// <summary>The sides as they stand are looked over.</summary>
    LookAtSides,
    /// <summary>A coating is put on file: there is none.</summary>
    WriteCoating,
    /// <summary>The first coat is chosen.</summary>
    ChooseCoating,
    /// <summary>The coats are in; the room comes next.</summary>
    GoToRoom,
    /// <summary>The room speaks against a coat.</summary>
    ChangeRoom,
    /// <summary>All is in: the plan is looked at.</summary>
    SeePlan,
    /// <summary>The plan is being worked out.</summary>
    Wait,
    /// <summary>The plan does not hold.</summary>
    CurePlan,
    /// <summary>The plan holds.</summary>
    Stands,
}

/// <summary>The one next thing to do.</summary>
/// <param name="On">The phase on whose page it is done.</param>
/// <param name="Path">Place of its field in the document; null: it is no field.</param>
/// <param name="Then">Where to go on to once it is done; null: that comes by itself.</param>
public sealed record NextThing(Deed Deed, Phase On, Phrase Text, string? Path = null, Phase? Then = null);

/// <summary>The way from an empty job to its first plan, one thing at a time.</summary>
public static class FirstPlan
{
    /// <summary>What comes next for whoever looks at a phase's page.</summary>
    public static NextThing Next(JobSoFar job, Phase at)
    {
        ArgumentNullException.ThrowIfNull(job);
        return Tops(job, at) ?? Coats(job, at) ?? Room(job, at) ?? Rest(job) ?? Plan(job, at);
    }

    private static NextThing? Tops(JobSoFar job, Phase at)
    {
        if (job.Document.Tops.Count == 0) return new(Deed.AddTop, Phases.Measure, v => v.Say("Two minutes to a first plan, on your own measurements. Add the first top.", "Dos minutos hasta un primer plan, con sus propias medidas. Añada la primera cubierta."));
        if (FirstFault(job, Phases.Measure) is { } fault) return fault;
        if (at != Phases.Measure || job.Document.System.Count > 0) return null;
        if (job.Document.Tops.FirstOrDefault(top => top.Edges.Values.All(edge => edge.Kind is EdgeKind.Wall or EdgeKind.Splash)) is { } closed)
            return new(Deed.OpenASide, Phases.Measure, v => v.Say($"Where can you stand at {Misreads.Quote(v, closed.Name)}? Mark that side as open.", $"¿Dónde puede estar de pie en {Misreads.Quote(v, closed.Name)}? Marque ese lado como libre."));
        return new(Deed.LookAtSides, Phases.Measure, v => v.Say($"Are the sides so? {Sides(job.Document, v)} Change what differs, then go on.", $"¿Son así los lados? {Sides(job.Document, v)} Cambie lo que no sea así y siga."), Then: Phases.Materials);
    }

    private static NextThing? Coats(JobSoFar job, Phase at)
    {
        if (job.Document.System.Count > 0) return FirstFault(job, Phases.Materials) ?? (at == Phases.Materials && FirstFault(job, Phases.Conditions) is not null ? ToRoom : null);
        return job.HasCoatings
            ? new(Deed.ChooseCoating, Phases.Materials, v => v.Say("Choose your coats in the order they go on, the clear last.", "Elija sus capas en orden, al final el transparente."))
            : new(Deed.WriteCoating, Phases.Materials, v => v.Say("No coating is on file yet: put yours in from its data sheet.", "Aún no hay recubrimientos: anote el suyo según su ficha técnica."));
    }

    private static NextThing ToRoom => new(Deed.GoToRoom, Phases.Materials, v => v.Say("A coat is in. Add what else goes on, then go on to the room.", "Ya hay una capa. Añada las demás y siga con la sala."), Then: Phases.Conditions);

    private static NextThing? Room(JobSoFar job, Phase at) =>
        FirstFault(job, Phases.Conditions) is { } fault ? fault
        : at == Phases.Conditions && job.Conditions is { } room && !room.Coats.All(coat => coat.MayCoat)
            ? new(Deed.ChangeRoom, Phases.Conditions, v => v.Say("The room is not fit for every coat: below, each says what to change.", "La sala no vale para cada capa: abajo, cada una dice qué cambiar."))
        : null;

    private static NextThing? Rest(JobSoFar job) => FirstFault(job, Phases.Work) ?? FirstFault(job, Phases.Timeline);

    private static NextThing Plan(JobSoFar job, Phase at)
    {
        var places = Phases.All.ToList();
        if (places.IndexOf(at) < places.IndexOf(Phases.Work)) return new(Deed.SeePlan, at, v => v.Say("All is in. Look at your plan.", "Está todo. Vea su plan."), Then: Phases.Work);
        return job.Plan switch
        {
            null => new(Deed.Wait, at, v => v.Say("The order is being worked out.", "Se está calculando el orden.")),
            { Stands: true } => new(Deed.Stands, at, v => v.Say("Your first plan stands. Next: what to buy and to mix.", "Su primer plan está en pie. Sigue: qué comprar y mezclar."), Then: at == Phases.Work ? Phases.Supply : null),
            _ => new(Deed.CurePlan, Phases.Work, v => v.Say("Not a plan that works yet: the answer says why, and what would cure it.", "Aún no es un plan que funcione: la respuesta dice por qué y qué lo remedia.")),
        };
    }

    /// <summary>The first fault whose field stands on this phase's page.</summary>
    private static NextThing? FirstFault(JobSoFar job, Phase phase)
    {
        if (job.Faults.FirstOrDefault(f => Phases.OfField(f.Path) == phase) is not { } fault) return null;
        return fault.IsBlankYet && Label(job.Document, fault.Path) is { } label
            ? new(Deed.TypeIn, phase, v => TypeIn(job.Document, fault.Path, label(v), v), fault.Path)
            : new(Deed.PutRight, phase, v => $"{fault.Text(v)} {fault.Cure(v)}", fault.Path);
    }

    private static string TypeIn(JobDocument document, string path, string label, Voice voice) =>
        path.StartsWith("room.", StringComparison.Ordinal)
            ? voice.Say($"Read the room today: type {Misreads.Quote(voice, label)}.", $"Mida la sala hoy: escriba {Misreads.Quote(voice, label)}.")
        : IsUntouched(document.Tops[TopOf(path)].Outline)
            ? voice.Say($"Pick the shape, then type {Misreads.Quote(voice, label)}.", $"Elija la forma y escriba {Misreads.Quote(voice, label)}.")
        : voice.Say($"Now type {Misreads.Quote(voice, label)}.", $"Ahora escriba {Misreads.Quote(voice, label)}.");

    /// <summary>The name of a field that has to be filled in; null: one of the others.</summary>
    private static Phrase? Label(JobDocument document, string path) => path.Split('.') switch
    {
        ["room", var reading and ("air" or "humidity" or "surface" or "material")] => v => FieldLabels.Room(reading, v),
        [_, "outline", ['s', 'i', 'd', 'e', 's', '[', .. var index, ']'], "length"] => v => FieldLabels.Side(int.Parse(index, CultureInfo.InvariantCulture), v),
        [_, "outline", var size] when size != "tapeStep" => v => FieldLabels.Size(document.Tops[TopOf(path)].Outline.Shape, size, v),
        _ => null,
    };

    private static int TopOf(string path) => int.Parse(path.AsSpan("tops[".Length, path.IndexOf(']', StringComparison.Ordinal) - "tops[".Length), CultureInfo.InvariantCulture);

    private static bool IsUntouched(OutlineDocument outline) => outline.Length is null && outline.Depth is null && outline.Diameter is null && (outline.Sides ?? []).All(side => side.Length.IsBlank);

    /// <summary>Each kind of side with its letters; of several tops no letter says enough.</summary>
    private static string Sides(JobDocument document, Voice voice) => document.Tops is [var only]
        ? string.Join("; ", SideLetters.Of(only.Outline)
            .GroupBy(letter => only.Edges.GetValueOrDefault(letter.ToString())?.Kind ?? EdgeKind.Wall)
            .OrderBy(side => side.Key)
            .Select(side => $"{string.Join(", ", side)}: {FieldWords.Value("kind", Written(side.Key), voice)}")) + "."
        : "";

    private static string Written(EdgeKind kind) => kind.ToString().ToLowerInvariant();
}
