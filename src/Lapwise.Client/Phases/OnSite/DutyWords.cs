using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;

namespace Lapwise.Client.Phases.OnSite;

/// <summary>What somebody does and what their one tap means, in words short enough to be read at arm's length.</summary>
internal static class DutyWords
{
    public static string Heading(Duty doing, Voice v) => doing switch
    {
        Duty.Rolling(var s, _) => v.Say($"Rolling section {s.Id}", $"Aplicando la sección {s.Id}"),
        Duty.Begin(var s) => v.Say($"Begin section {s.Id}", $"Empiece la sección {s.Id}"),
        Duty.Mixing(var b) => v.Say($"Mixing batch {b.Id}", $"Haciendo la mezcla {b.Id}"),
        Duty.Mix(var b) => v.Say($"Mix batch {b.Id}", $"Prepare la mezcla {b.Id}"),
        Duty.Wait(_, var then) => v.Say("Wait, then: ", "Espere; luego: ") + Heading(then, v).ToLower(System.Globalization.CultureInfo.InvariantCulture),
        _ => v.Say("Nothing more", "Nada más"),
    };

    public static string Place(Duty doing, Voice v) => doing switch
    {
        Duty.Rolling(var s, _) => Where(s, v),
        Duty.Begin(var s) => Where(s, v),
        _ => "",
    };

    /// <summary>What one tap says; null where there is nothing to tap.</summary>
    public static string? Tap(PersonNow person, Voice v) => person switch
    {
        { Now: Duty.Rolling(var s, _), Then: Duty.Begin(var next) } => v.Say($"{s.Id} is dry-rolled → begin {next.Id}", $"{s.Id} en seco hecha → empiezo {next.Id}"),
        { Now: Duty.Rolling(var s, _) } => v.Say($"{s.Id} is dry-rolled", $"{s.Id} en seco hecha"),
        { Now: Duty.Begin(var s) } => v.Say($"First wet material on {s.Id}", $"Primer material en {s.Id}"),
        { Now: Duty.Mixing, Then: Duty.Begin(var next) } => v.Say($"Mixed → begin {next.Id}", $"Mezclado → empiezo {next.Id}"),
        { Now: Duty.Mix(var b) } => v.Say($"A and B together: batch {b.Id}", $"A y B juntos: mezcla {b.Id}"),
        { Now: Duty.Wait(_, Duty.Begin(var next)) } => v.Say($"Begin {next.Id} now", $"Empiezo {next.Id} ya"),
        { Now: Duty.Wait(_, Duty.Mix(var b)) } => v.Say($"Mix {b.Id} now: A and B together", $"Mezcla {b.Id} ya: A y B juntos"),
        _ => null,
    };

    public static string Then(Duty then, long nowMs, Voice v) => then switch
    {
        Duty.Nothing => v.Say("Then: nothing more.", "Después: nada más."),
        Duty.Wait(var until, var what) => v.Say($"Then: wait until {Voice.Span(Math.Max(0, until - nowMs) / 1000)} from now, ", $"Después: espere hasta dentro de {Voice.Span(Math.Max(0, until - nowMs) / 1000)}, ") + Heading(what, v).ToLower(System.Globalization.CultureInfo.InvariantCulture) + ".",
        _ => v.Say("Then: ", "Después: ") + Heading(then, v).ToLower(System.Globalization.CultureInfo.InvariantCulture) + ".",
    };

    private static string Where(IssuedSection s, Voice v) =>
        MarkWords.Place(s, v) + (s.StandSide is { } side ? v.Say($", from side {side}", $", desde el lado {side}") : "") + " · " + v.Area(s.FilmM2);
}
