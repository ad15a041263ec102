using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.OnSite;

namespace Lapwise.Client.Phases.OnSite;

/// <summary>What somebody does and what their one tap means, in words short enough to be read at arm's length.</summary>
internal static class DutyWords
{
    public static string Heading(Duty doing, IssuedPlan plan, Voice v) => doing switch
    {
        Duty.Rolling(var s, _) => IsRolled(plan) ? v.Say($"Rolling section {s.Id}", $"Aplicando la sección {s.Id}") : v.Say($"Doing section {s.Id}", $"Haciendo la sección {s.Id}"),
        Duty.Begin(var s, _) => v.Say($"Begin section {s.Id}", $"Empiece la sección {s.Id}"),
        Duty.Mixing(var b) => v.Say($"Mixing batch {b.Id}", $"Haciendo la mezcla {b.Id}"),
        Duty.Mix(var b) => v.Say($"Mix batch {b.Id}", $"Prepare la mezcla {b.Id}"),
        Duty.Wait(_, var then) => v.Say("Wait, then: ", "Espere; luego: ") + Inside(Heading(then, plan, v)),
        _ => v.Say("Nothing more", "Nada más"),
    };

    public static string Place(Duty doing, Voice v) => doing switch
    {
        Duty.Rolling(var s, _) => Where(s, v),
        Duty.Begin(var s, _) => Where(s, v),
        _ => "",
    };

    /// <summary>What one tap says; null where there is nothing to tap.</summary>
    public static string? Tap(PersonNow person, IssuedPlan plan, Voice v) => person switch
    {
        { Now: Duty.Rolling(var s, _), Then: Duty.Begin(var next, _) } => $"{Done(s.Id, plan, v)} → " + v.Say($"begin {next.Id}", $"empiezo {next.Id}"),
        { Now: Duty.Rolling(var s, _) } => Done(s.Id, plan, v),
        { Now: Duty.Begin(var s, _) } => v.Say($"First wet material on {s.Id}", $"Primer material en {s.Id}"),
        { Now: Duty.Mixing, Then: Duty.Begin(var next, _) } => v.Say($"Mixed → begin {next.Id}", $"Mezclado → empiezo {next.Id}"),
        { Now: Duty.Mixing(var b), Then: Duty.Mix(var next) } => v.Say($"{b.Id} is mixed → A and B together: batch {next.Id}", $"{b.Id} mezclada → A y B juntos: mezcla {next.Id}"),
        { Now: Duty.Mix(var b) } => v.Say($"A and B together: batch {b.Id}", $"A y B juntos: mezcla {b.Id}"),
        { Now: Duty.Wait(_, Duty.Begin(var next, _)) } => v.Say($"Begin {next.Id} now", $"Empiezo {next.Id} ya"),
        { Now: Duty.Wait(_, Duty.Mix(var b)) } => v.Say($"Mix {b.Id} now: A and B together", $"Mezcla {b.Id} ya: A y B juntos"),
        _ => null,
    };

    public static string Then(Duty then, IssuedPlan plan, long nowMs, Voice v) => then switch
    {
        Duty.Over => v.Say("Then: nothing more.", "Después: nada más."),
        Duty.Wait(var until, var what) => v.Say($"Then: wait until {Voice.Span(Math.Max(0, until - nowMs) / 1000)} from now, ", $"Después: espere hasta dentro de {Voice.Span(Math.Max(0, until - nowMs) / 1000)}, ") + Inside(Heading(what, plan, v)) + ".",
        _ => v.Say("Then: ", "Después: ") + Inside(Heading(then, plan, v)) + ".",
    };

    /// <summary>A rolled section ends with its dry pass; a poured, brushed or wiped one when it is done.</summary>
    public static string Done(string section, IssuedPlan plan, Voice v) =>
        IsRolled(plan) ? v.Say($"{section} is dry-rolled", $"{section} en seco, hecha") : v.Say($"{section} is done", $"{section} hecha");

    /// <summary>Inside a sentence; a batch keeps its capital.</summary>
    private static string Inside(string heading) => char.ToLowerInvariant(heading[0]) + heading[1..];

    private static bool IsRolled(IssuedPlan plan) => plan.Method is ApplicationMethod.Rolled;

    private static string Where(IssuedSection s, Voice v) =>
        MarkWords.Place(s, v) + (s.StandSide is { } side ? v.Say($", from side {side}", $", desde el lado {side}") : "") + " · " + v.Area(s.FilmM2);
}
