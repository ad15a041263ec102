using Lapwise.Core.Explain;

namespace Lapwise.Core;

/// <summary>One phase of the job.</summary>
/// <param name="Folder">Folder and namespace in the core.</param>
/// <param name="Route">Last part of its address in the page and the API.</param>
public sealed record Phase(string Folder, string Route, Phrase Name, Phrase Question);

/// <summary>
/// The phases in the order in which data flows; a phase may use those before it, never those after.
/// Command-line help, page navigation, routes, the docs index and the test of direction read this list.
/// </summary>
public static class Phases
{
    public static readonly Phase Measure = new("Measure", "measure",
        v => v.Say("Measure", "Medir"),
        v => v.Say("What is there to coat, and is my tape right?", "¿Qué hay que recubrir, y mide bien mi cinta?"));
    public static readonly Phase Materials = new("Materials", "materials",
        v => v.Say("Materials", "Material"),
        v => v.Say("How much of each product, in what mix?", "¿Cuánto de cada producto y en qué mezcla?"));
    public static readonly Phase Conditions = new("Conditions", "conditions",
        v => v.Say("Conditions", "Condiciones"),
        v => v.Say("May I coat in this room today, and how long does the film stay open?", "¿Puedo aplicar hoy en esta sala, y cuánto queda abierta la película?"));
    public static readonly Phase Work = new("Work", "work",
        v => v.Say("Order of work", "Orden de trabajo"),
        v => v.Say("Which sections, in which order, and when to mix?", "¿Qué secciones, en qué orden, y cuándo mezclar?"));
    public static readonly Phase Supply = new("Supply", "supply",
        v => v.Say("Supply", "Suministro"),
        v => v.Say("Which kits to buy and what goes into each batch?", "¿Qué juegos comprar y qué lleva cada mezcla?"));

    public static readonly Phase Timeline = new("Timeline", "timeline",
        v => v.Say("Timeline", "Calendario"),
        v => v.Say("Which days, with which recoat windows?", "¿Qué días, con qué ventanas de repintado?"));

    public static readonly Phase Money = new("Money", "money",
        v => v.Say("Money", "Dinero"),
        v => v.Say("What do I charge, and does it pay?", "¿Cuánto cobro, y sale a cuenta?"));

    public static readonly Phase OnSite = new("OnSite", "run",
        v => v.Say("On site", "En obra"),
        v => v.Say("What do I do this minute?", "¿Qué hago en este minuto?"));

    /// <summary>The phase on whose page a field of the document stands, by its path.</summary>
    public static Phase OfField(string path) => path?.Split('.', '[')[0] switch
    {
        "tops" => Measure,
        "system" or "tools" or "products" => Materials,
        "room" => Conditions,
        "timeline" => Timeline,
        "agreement" => Money,
        _ => Work,
    };

    public static IReadOnlyList<Phase> All { get; } = [Measure, Materials, Conditions, Work, Supply, Timeline, Money, OnSite];
}
