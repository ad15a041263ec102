using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;

namespace Lapwise.Documents.Parts;

/// <summary>Words that more than one part of the sheet uses.</summary>
internal static class Say
{
    public static string Origin(Origin origin, Voice voice) => origin switch
    {
        Core.Quantities.Origin.DataSheet => voice.Say("data sheet", "ficha técnica"),
        Core.Quantities.Origin.TestBoard => voice.Say("test board", "placa de prueba"),
        _ => voice.Say("guess", "suposición"),
    };

    public static string Time(double seconds, Origin origin, Voice voice) => $"{Voice.Span(seconds)} ({Origin(origin, voice)})";

    /// <summary>From when on the tops may be used so.</summary>
    public static string From(UseOf use, Voice voice) => UseDate.Say(use, voice) + voice.Say(" from", " desde");

    /// <summary>What the clock of a plan counts; it is no time of day.</summary>
    public static string Clock(Voice voice) => voice.Say(
        "The clock of each coat runs from the start of its first mix: minutes:seconds, after an hour hours:minutes:seconds.",
        "El reloj de cada capa corre desde que empieza su primera mezcla: minutos:segundos, pasada una hora horas:minutos:segundos.");

    public static string Hazard(Hazard hazard, Voice voice) => hazard switch
    {
        Core.Explain.Hazard.Isocyanate => voice.Say("isocyanate", "isocianato"),
        Core.Explain.Hazard.FlammableVapour => voice.Say("vapour that catches fire", "vapor inflamable"),
        Core.Explain.Hazard.HotMix => voice.Say("a mix that heats itself", "mezcla que se calienta sola"),
        Core.Explain.Hazard.EpoxyAmine => voice.Say("epoxy and amine", "epoxi y amina"),
        Core.Explain.Hazard.SolventVapour => voice.Say("solvent vapour", "vapor de disolvente"),
        Core.Explain.Hazard.SkinSensitiser => voice.Say("skin sensitiser", "sensibilizante de la piel"),
        Core.Explain.Hazard.SandingDust => voice.Say("sanding dust", "polvo de lijado"),
        _ => throw new ArgumentOutOfRangeException(nameof(hazard)),
    };

    /// <summary>A reason with its remedy, marked by how hard its limit is.</summary>
    public static Item Reason(Reason reason, Voice voice) => new(
        reason.Limit switch { Limit.Never => ItemMark.Stop, Limit.AtYourWord => ItemMark.Caution, _ => ItemMark.Point },
        reason.Limit switch
        {
            Limit.Never => voice.Say("Never: ", "Nunca: "),
            Limit.AtYourWord => voice.Say("Only at your word: ", "Solo bajo su palabra: "),
            _ => "",
        } + $"{reason.Text(voice)} {reason.Remedy(voice)}");
}
