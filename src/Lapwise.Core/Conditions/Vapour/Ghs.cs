using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Conditions.Vapour;

/// <summary>Signal word of the Globally Harmonized System; each label carries the stronger of its statements'.</summary>
public enum SignalWord { Warning, Danger }

/// <summary>A hazard statement as labels print it.</summary>
public sealed record HazardStatement(string Code, SignalWord Signal, Phrase Text);

/// <summary>Hazard statements that coatings, hardeners and solvents carry. The label and safety data sheet in hand come first.</summary>
public static class Ghs
{
    public static IReadOnlyList<HazardStatement> All { get; } =
    [
        new("H225", SignalWord.Danger, v => v.Say("Highly flammable liquid and vapour", "Líquido y vapores muy inflamables")),
        new("H226", SignalWord.Warning, v => v.Say("Flammable liquid and vapour", "Líquido y vapores inflamables")),
        new("H302", SignalWord.Warning, v => v.Say("Harmful if swallowed", "Nocivo en caso de ingestión")),
        new("H304", SignalWord.Danger, v => v.Say("May be fatal if swallowed and enters airways", "Puede ser mortal en caso de ingestión y penetración en las vías respiratorias")),
        new("H312", SignalWord.Warning, v => v.Say("Harmful in contact with skin", "Nocivo en contacto con la piel")),
        new("H314", SignalWord.Danger, v => v.Say("Causes severe skin burns and eye damage", "Provoca quemaduras graves en la piel y lesiones oculares graves")),
        new("H315", SignalWord.Warning, v => v.Say("Causes skin irritation", "Provoca irritación cutánea")),
        new("H317", SignalWord.Warning, v => v.Say("May cause an allergic skin reaction", "Puede provocar una reacción alérgica en la piel")),
        new("H318", SignalWord.Danger, v => v.Say("Causes serious eye damage", "Provoca lesiones oculares graves")),
        new("H319", SignalWord.Warning, v => v.Say("Causes serious eye irritation", "Provoca irritación ocular grave")),
        new("H331", SignalWord.Danger, v => v.Say("Toxic if inhaled", "Tóxico en caso de inhalación")),
        new("H332", SignalWord.Warning, v => v.Say("Harmful if inhaled", "Nocivo en caso de inhalación")),
        new("H334", SignalWord.Danger, v => v.Say("May cause allergy or asthma symptoms or breathing difficulties if inhaled", "Puede provocar síntomas de alergia o asma o dificultades respiratorias en caso de inhalación")),
        new("H335", SignalWord.Warning, v => v.Say("May cause respiratory irritation", "Puede irritar las vías respiratorias")),
        new("H336", SignalWord.Warning, v => v.Say("May cause drowsiness or dizziness", "Puede provocar somnolencia o vértigo")),
        new("H350", SignalWord.Danger, v => v.Say("May cause cancer", "Puede provocar cáncer")),
        new("H351", SignalWord.Warning, v => v.Say("Suspected of causing cancer", "Se sospecha que provoca cáncer")),
        new("H373", SignalWord.Warning, v => v.Say("May cause damage to organs through prolonged or repeated exposure", "Puede provocar daños en los órganos tras exposiciones prolongadas o repetidas")),
    ];

    /// <summary>Usual statements for a hazard a product names; its own label may carry more.</summary>
    public static IReadOnlyList<HazardStatement> Usual(Hazard hazard) => hazard switch
    {
        Hazard.Isocyanate => Pick("H317", "H332", "H334", "H335"),
        Hazard.EpoxyAmine => Pick("H314", "H317", "H319"),
        Hazard.FlammableVapour => Pick("H225"),
        Hazard.SolventVapour => Pick("H319", "H336"),
        Hazard.SkinSensitiser => Pick("H317"),
        Hazard.HotMix => [],
        Hazard.SandingDust => Pick("H335", "H373"),
        _ => throw new ArgumentOutOfRangeException(nameof(hazard), hazard, null),
    };

    /// <summary>Signal word and statements as labels usually print them for these hazards; null where there are none.</summary>
    public static Phrase? Label(IReadOnlyList<Hazard> hazards)
    {
        var statements = hazards.SelectMany(Usual).Distinct().OrderBy(s => s.Code, StringComparer.Ordinal).ToList();
        if (statements.Count == 0) return null;
        var signal = statements.Max(s => s.Signal);
        return v => v.Say("Labels of this kind usually say", "Las etiquetas de este tipo suelen decir") +
            $": {Say(signal, v).ToUpperInvariant()}. " + string.Join("; ", statements.Select(s => $"{s.Text(v)} ({s.Code})")) + ".";
    }

    /// <summary>What one product's own label says; where it was not entered, what labels of its hazards usually say.</summary>
    public static Phrase? LabelOf(Product product)
    {
        if (product.Label.Count == 0) return Label(product.Hazards) is { } usual ? v => $"{product.Name}. {usual(v)}" : null;
        var known = product.Label.Distinct(StringComparer.Ordinal).Select(code => All.SingleOrDefault(s => s.Code == code) ?? new HazardStatement(code, SignalWord.Warning, v => v.Say("see its label", "vea su etiqueta"))).ToList();
        return v => v.Say($"{product.Name}. Its label", $"{product.Name}. Su etiqueta") + $": {Say(known.Max(s => s.Signal), v).ToUpperInvariant()}. " + string.Join("; ", known.Select(s => $"{s.Text(v)} ({s.Code})")) + ".";
    }

    public static string Say(SignalWord word, Voice v) => word is SignalWord.Danger ? v.Say("Danger", "Peligro") : v.Say("Warning", "Atención");

    private static IReadOnlyList<HazardStatement> Pick(params string[] codes) => [.. codes.Select(c => All.Single(s => s.Code == c))];
}
