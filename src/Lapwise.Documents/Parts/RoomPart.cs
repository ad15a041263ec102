using Lapwise.Core;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Day;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Drawings;

namespace Lapwise.Documents.Parts;

/// <summary>The room, and whether each coat may go on in it.</summary>
internal static class RoomPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, Paper paper)
    {
        var (room, conditions) = (whole.Job.Room, whole.Conditions);
        yield return new Block.Heading(1, voice.Say("The room: may I coat?", "La sala: ¿puedo aplicar?"));
        yield return new Block.Facts(
        [
            new(voice.Say("air", "aire"), voice.Temperature(room.Air.Celsius)),
            new(voice.Say("humidity", "humedad"), voice.Percent(room.RelativeHumidity)),
            new(voice.Say("air movement", "movimiento del aire"), Movement(room.AirMovement, voice)),
            new(voice.Say("surface", "superficie"), voice.Temperature(room.Surface.Celsius)),
            new(voice.Say("material", "material"), voice.Temperature(room.Material.Celsius)),
            new(voice.Say("dew point", "punto de rocío"), voice.Temperature(conditions.DewPointC)),
        ]);
        yield return new Block.Table(
            [
                new(voice.Say("coat", "capa"), 3.2), new(voice.Say("may I coat?", "¿puedo aplicar?"), 1.5), new(voice.Say("open time (origin)", "tiempo abierto (origen)"), 2.6),
                new(voice.Say("pot life (origin)", "vida de la mezcla (origen)"), 2.6), new(voice.Say("above dew point", "sobre el rocío"), 1.4, Right: true),
            ],
            [.. conditions.Coats.Select((c, i) => Row(c, i, voice))]);
        foreach (var block in Hours(whole, voice, paper)) yield return block;
        foreach (var (coat, i) in conditions.Coats.Select((c, i) => (c, i)).Where(c => c.c.Reasons.Count + c.c.Vapours.Count > 0))
        {
            yield return new Block.Heading(2, voice.Say($"Coat {i + 1}, {coat.Coat.Title(voice)}", $"Capa {i + 1}, {coat.Coat.Title(voice)}"));
            foreach (var vapour in coat.Vapours) yield return new Block.Paragraph(vapour.Line(voice));
            yield return new Block.Items([.. coat.Reasons.Select(r => Say.Reason(r, voice))]);
        }
    }

    /// <summary>The strip of hours for each product, two side by side; a room that stays as read needs none.</summary>
    private static IEnumerable<Block> Hours(WholeJob whole, Voice voice, Paper paper)
    {
        if (DailySwing.Of(whole.Job) is not { } swing || whole.Job.System.Count == 0) yield break;
        var days = whole.Job.System.Select(c => c.Product).DistinctBy(p => p.Id).Select(p => (Product: p, Day: RoomDay.Over24Hours(p, swing))).ToList();
        var sheet = new Sheet(days.Count == 1 ? paper.InnerWidthPt - 4 : (paper.InnerWidthPt - 20) / 2, 220, 8);
        yield return new Block.Heading(2, voice.Say("The room hour by hour", "La sala hora a hora"));
        yield return new Block.Paragraph(voice.Say($"As read, swinging {voice.TemperatureDifference(swing.SwingK)} night to day; measure again before each coat.", $"Tal como se leyó, con {voice.TemperatureDifference(swing.SwingK)} de noche a día; vuelva a medir antes de cada capa."));
        yield return new Block.Figures([.. days.Select(d => new Figure($"{d.Product.Name}: {d.Day.Strip.Best?.Hours(voice) ?? voice.Say("no hour of this day", "ninguna hora de este día")}", HourDrawing.Draw(d.Day, voice, sheet)))]);
    }

    private static Row Row(CoatConditions coat, int i, Voice voice) => new(
    [
        $"{i + 1}. {coat.Coat.Title(voice)}",
        coat.MayCoat ? voice.Say("yes", "sí") : voice.Say("NO, see below", "NO, vea abajo"),
        Say.Time(coat.OpenTime.Seconds, coat.OpenTime.Origin, voice),
        Say.Time(coat.PotLife.Seconds, coat.PotLife.Origin, voice),
        voice.TemperatureDifference(coat.DewMarginC),
    ], Strong: !coat.MayCoat);

    private static string Movement(AirMovement movement, Voice voice) => movement switch
    {
        AirMovement.Still => voice.Say("still", "quieto"),
        AirMovement.Slight => voice.Say("slight", "leve"),
        AirMovement.Moving => voice.Say("moving", "en movimiento"),
        _ => throw new ArgumentOutOfRangeException(nameof(movement)),
    };
}
