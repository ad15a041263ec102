using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>What the old surface itself can do to whoever sands or strips it.</summary>
public static class GroundCautions
{
    private static readonly Phrase Silica = v => v.Say(
        "Dust of tile, stone, concrete and engineered stone carries silica, which scars the lungs for good: sand wet or with extraction and a fine-dust filter, with the respirator the task needs (29 CFR 1926.1153, from memory; local rules).",
        "El polvo de azulejo, piedra, hormigón y aglomerado lleva sílice, que cicatriza los pulmones para siempre: lije en húmedo o con aspiración y filtro de polvo fino, con el respirador que pida la tarea (29 CFR 1926.1153, de memoria; normas locales).");

    private static readonly Phrase LeadOrAsbestos = v => v.Say(
        "Old work may hold lead (paint and glaze, most of all in a house built before 1978) or asbestos (old tile adhesive, backing board, filler). Where you suspect either: stop, sand and break nothing, and have it tested first (40 CFR 745 and 40 CFR 763, from memory; local rules and licensed practice).",
        "Lo viejo puede llevar plomo (pintura y esmalte, sobre todo en casas anteriores a 1978) o amianto (adhesivo de azulejo, placa de respaldo o masilla antiguos). Si lo sospecha: pare, no lije ni rompa nada, y hágalo analizar antes (40 CFR 745 y 40 CFR 763, de memoria; normas locales y ejercicio con licencia).");

    private static readonly Phrase WoodDust = v => v.Say(
        "Wood dust harms the airways and can catch fire: extraction, and the respirator the task needs.",
        "El polvo de madera daña las vías respiratorias y puede prenderse: aspiración, y el respirador que pida la tarea.");

    /// <param name="substrate">Null: in doubt, so all that it could be.</param>
    public static IReadOnlyList<Phrase> For(Substrate? substrate) => substrate switch
    {
        Substrate.Laminate => [],
        Substrate.Wood => [WoodDust],
        Substrate.Tile => [Silica, LeadOrAsbestos],
        Substrate.Stone => [Silica],
        Substrate.OldCoating => [LeadOrAsbestos],
        null => [Silica, LeadOrAsbestos],
        _ => throw new ArgumentOutOfRangeException(nameof(substrate), substrate, null),
    };
}
