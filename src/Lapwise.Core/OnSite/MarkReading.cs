namespace Lapwise.Core.OnSite;

/// <summary>Turns a mark as kept into what it says, and back. What is not known is kept as it is.</summary>
public static class MarkReading
{
    /// <summary>Never fails: a mark that cannot be understood says <see cref="What.NotKnown"/>.</summary>
    public static Mark Read(MarkDocument d) => new(
        new Stamp(d.Id, new DeviceMoment(d.Device, d.Session, d.ClockMs, d.TicksMs), d.Number, d.Assumed ?? false, Math.Max(0, d.BackMs ?? 0)),
        WhatOf(d));

    public static MarkDocument Write(Mark mark)
    {
        var s = mark.Stamp;
        var d = new MarkDocument
        {
            Id = s.Id,
            Device = s.Made.Device,
            Number = s.Number,
            ClockMs = s.Made.ClockMs,
            Session = s.Made.Session,
            TicksMs = s.Made.TicksMs,
            Assumed = s.Assumed ? true : null,
            BackMs = s.BackMs > 0 ? s.BackMs : null,
        };
        return mark.What switch
        {
            What.Issued w => d with { Kind = "issued", Plan = w.Plan },
            What.BatchMixed w => d with { Kind = "batchMixed", Batch = w.Batch, Person = w.Person },
            What.SectionWet w => d with { Kind = "sectionWet", Section = w.Section, Person = w.Person, Batch = w.Batch },
            What.SectionDry w => d with { Kind = "sectionDry", Section = w.Section, Person = w.Person },
            What.StepDone w => d with { Kind = "stepDone", Step = w.Step },
            What.Paused => d with { Kind = "paused" },
            What.Resumed => d with { Kind = "resumed" },
            What.Reading w => d with { Kind = "reading", Of = w.Quantity, Value = w.Value },
            What.Replanned w => d with { Kind = "replanned", Turns = w.Turns },
            What.StoppedBefore w => d with { Kind = "stoppedBefore", Left = w.Left },
            What.Undone w => d with { Kind = "undone", Of = w.Mark },
            What.Noted w => d with { Kind = "note", Text = w.Text },
            What.Checked w => d with { Kind = "checked", Of = w.Point },
            What.TakenUp w => d with { Kind = "takenUp", Of = w.Code, Text = w.Why },
            What.Led w => d with { Kind = "led", Of = w.Device },
            What.Paired w => d with { Kind = "paired", OffsetMs = w.OffsetMs, RoundTripMs = w.RoundTripMs },
            _ => throw new ArgumentException("A mark that is not known is never made, only kept.", nameof(mark)),
        };
    }

    private static What WhatOf(MarkDocument d) => d switch
    {
        { Kind: "issued", Plan: { } plan } when IsWhole(plan) => new What.Issued(plan),
        { Kind: "batchMixed", Batch: { } batch } => new What.BatchMixed(batch, d.Person ?? 0),
        { Kind: "sectionWet", Section: { } section } => new What.SectionWet(section, d.Person ?? 0, d.Batch),
        { Kind: "sectionDry", Section: { } section } => new What.SectionDry(section, d.Person ?? 0),
        { Kind: "stepDone", Step: { } step } => new What.StepDone(step),
        { Kind: "paused" } => new What.Paused(),
        { Kind: "resumed" } => new What.Resumed(),
        { Kind: "reading", Of: { } of, Value: { } value } when double.IsFinite(value) => new What.Reading(of, value),
        { Kind: "replanned", Turns: { } turns } when turns.All(t => t is { Section: not null, Batch: not null } && (t.Mixes is null || t.Mixes.All(m => m is not null))) => new What.Replanned(turns),
        { Kind: "stoppedBefore", Left: { } left } when left.All(l => l is not null) => new What.StoppedBefore(left),
        { Kind: "undone", Of: { } mark } => new What.Undone(mark),
        { Kind: "note", Text: { } text } => new What.Noted(text),
        { Kind: "checked", Of: { } point } => new What.Checked(point),
        { Kind: "takenUp", Of: { } code, Text: { } why } => new What.TakenUp(code, why),
        { Kind: "led", Of: { } device } => new What.Led(device),
        { Kind: "paired", OffsetMs: { } offset, RoundTripMs: { } trip } => new What.Paired(offset, trip),
        _ => new What.NotKnown(),
    };

    /// <summary>A file can leave out or repeat what a plan must have once; such a plan is kept and not worked from.</summary>
    private static bool IsWhole(IssuedPlan p) =>
        p is { Crew: not null, Sections: not null, Laps: not null, Batches: not null, Steps: not null, Against: not null, Hazards: not null }
        && p.Sections.All(s => s is { Id: not null, Top: not null, Batch: not null, Rings: not null, After: not null, TakesMs: not null })
        && p.Sections.Select(s => s.Id).Distinct(StringComparer.Ordinal).Count() == p.Sections.Count
        && p.Laps.All(l => l is { Line: not null } && p.Sections.Any(s => s.Id == l.A) && p.Sections.Any(s => s.Id == l.B))
        && p.Batches.All(b => b is { Id: not null })
        && p.Steps.All(s => s is { Id: not null, With: not null })
        && p.Against.All(a => a is { Code: not null });
}
