using Lapwise.Core;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Documents.Parts;

/// <summary>The room, and whether each coat may go on in it.</summary>
internal static class RoomPart
{
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice)
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
        foreach (var (coat, i) in conditions.Coats.Select((c, i) => (c, i)).Where(c => c.c.Reasons.Count + c.c.Vapours.Count > 0))
        {
            yield return new Block.Heading(2, voice.Say($"Coat {i + 1}, {Say.Coat(coat.Coat)}", $"Capa {i + 1}, {Say.Coat(coat.Coat)}"));
            foreach (var vapour in coat.Vapours) yield return new Block.Paragraph(vapour.Line(voice));
            yield return new Block.Items([.. coat.Reasons.Select(r => Say.Reason(r, voice))]);
        }
    }

    private static Row Row(CoatConditions coat, int i, Voice voice) => new(
    [
        $"{i + 1}. {Say.Coat(coat.Coat)}",
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
