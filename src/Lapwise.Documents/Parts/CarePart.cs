using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;
using Lapwise.Core.Timeline;

namespace Lapwise.Documents.Parts;

/// <summary>For the customer: when the tops may be used, and how they are cared for.</summary>
internal static class CarePart
{
    /// <param name="ownPage">Handed out for itself.</param>
    public static IEnumerable<Block> Blocks(WholeJob whole, Voice voice, bool ownPage = false)
    {
        yield return new Block.Heading(1, voice.Say("Care of the new surface", "Cuidado de la superficie nueva"), ownPage);
        if (whole.Timeline.UseDates.Count > 0)
        {
            if (!whole.Timeline.Holds) yield return DaysPart.NotToPromise(whole.Timeline, voice);
            yield return new Block.Facts([.. whole.Timeline.UseDates.Select(u => new Fact(
                Say.From(u.Use, voice) + (u.Origin == Origin.Guess ? voice.Say(" (cautious guess)", " (suposición prudente)") : ""), SiteClock.Moment(whole.Timeline, u.From, voice)))]);
            yield return new Block.Paragraph(voice.Say("The days are for the room as it was planned; in a colder one everything comes later.", "Los días valen para la sala como se planificó; con más frío, todo llega más tarde."));
        }

        yield return new Block.Heading(2, voice.Say("Until full cure", "Hasta el curado total"));
        yield return new Block.Items(
        [
            new(ItemMark.Stop, voice.Say("No hot pan, iron or appliance that blows heat on it.", "Ni sartén caliente, ni plancha, ni aparato que eche calor encima.")),
            new(ItemMark.Stop, voice.Say("Nothing left standing on it overnight; no mats, no tape, no plastic film.", "Nada encima toda la noche; ni manteles, ni cinta, ni plástico.")),
            new(ItemMark.Point, voice.Say("Wipe spills at once with a soft damp cloth and dry it.", "Limpie al momento lo derramado con un paño suave húmedo y seque.")),
        ]);
        yield return new Block.Heading(2, voice.Say("After that", "Después"));
        yield return new Block.Items(
        [
            new(ItemMark.Point, voice.Say("Clean with a soft cloth, water and a little washing-up liquid.", "Limpie con un paño suave, agua y un poco de jabón de platos.")),
            new(ItemMark.Stop, voice.Say("No scouring powder or pad, no bleach, no oven cleaner, no solvent.", "Ni polvos ni estropajo abrasivo, ni lejía, ni limpiahornos, ni disolvente.")),
            new(ItemMark.Point, voice.Say("Always a board under the knife and a trivet under the pot: the film can be cut, and heat marks it.", "Siempre una tabla bajo el cuchillo y un salvamanteles bajo la olla: la película se corta y el calor la marca.")),
            new(ItemMark.Stop, voice.Say("Do not sit or stand on it, nor drag heavy things.", "No se siente ni se suba, ni arrastre cosas pesadas.")),
            new(ItemMark.Point, voice.Say("Call before you mend a chip or a scratch yourself.", "Llame antes de reparar usted un golpe o un rayón.")),
        ]);
        yield return new Block.Heading(2, voice.Say("What was put on", "Qué se aplicó"));
        yield return new Block.Items([.. whole.Job.System.Select((c, i) => new Item(ItemMark.Point, voice.Say($"Coat {i + 1}: {c.Title(voice)}", $"Capa {i + 1}: {c.Title(voice)}")))]);
        yield return new Block.Paragraph(voice.Say("Common practice, no source: where the maker's own care sheet says otherwise, it rules.", "Práctica común, sin fuente: donde la hoja de cuidados del fabricante diga otra cosa, manda ella."));
    }
}
