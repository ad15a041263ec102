using Lapwise.Core.Explain;
using static Lapwise.Core.Quantities.Factors;

namespace Lapwise.Core.Jobs;

/// <summary>A value taken where none is entered, with what it rests on.</summary>
public sealed record Assumption(double Value, Phrase Note, Source Source);

/// <summary>Everything that is assumed where a document leaves it out. Each can be entered instead.</summary>
public static class Defaults
{
    public static class Pace
    {
        /// <summary>m²/s.</summary>
        public static readonly Assumption WetOut = Trade(6 * SquareMetresPerSquareFoot / 60,
            v => v.Say("Wetting out 6 ft² a minute with a 1/4 in nap", "Mojar 0,56 m² por minuto con felpa de 6 mm"));

        /// <summary>m²/s.</summary>
        public static readonly Assumption DryPass = Trade(12 * SquareMetresPerSquareFoot / 60,
            v => v.Say("Dry-rolling 12 ft² a minute, each pass over half of the last", "Repasar en seco 1,1 m² por minuto, cada pasada sobre media anterior"));

        /// <summary>m/s.</summary>
        public static readonly Assumption Edge = Trade(8 * MetresPerFoot / 60,
            v => v.Say("Edges and nosings 8 ft a minute", "Cantos a 2,4 m por minuto"));

        /// <summary>Seconds.</summary>
        public static readonly Assumption Reload = Trade(20, v => v.Say("20 s to load the roller for each section", "20 s para cargar el rodillo en cada sección"));

        /// <summary>Seconds.</summary>
        public static readonly Assumption Walk = Trade(10, v => v.Say("10 s to walk to another place", "10 s para caminar a otro sitio"));

        /// <summary>Seconds.</summary>
        public static readonly Assumption Mix = Trade(150, v => v.Say("Mixing by hand takes 2 to 3 minutes", "Mezclar a mano lleva de 2 a 3 minutos"));
    }

    public static class Tools
    {
        /// <summary>mL.</summary>
        public static readonly Assumption RollerCharge = Trade(2 * MlPerUsFluidOunce,
            v => v.Say("A 1/4 in nap keeps about 2 fl oz", "Una felpa de 6 mm retiene unos 60 mL"));

        /// <summary>mL.</summary>
        public static readonly Assumption TrayResidue = Trade(1.5 * MlPerUsFluidOunce,
            v => v.Say("A lined tray keeps about 1.5 fl oz", "Una bandeja con funda retiene unos 45 mL"));

        /// <summary>mL for each batch.</summary>
        public static readonly Assumption CupResidue = Trade(0.25 * MlPerUsFluidOunce,
            v => v.Say("A scraped mixing cup keeps about 1/4 fl oz", "Un vaso rebañado retiene unos 7 mL"));

        /// <summary>Share of what goes on edges and rims.</summary>
        public static readonly Assumption EdgeLoss = Trade(0.10,
            v => v.Say("A tenth of what goes on edges is lost passing over them", "Una décima parte de lo que va en los cantos se pierde al pasarlos"));

        /// <summary>Metres of top along each open edge of a poured coat.</summary>
        public static readonly Assumption RunOff = Trade(0.025,
            v => v.Say("A poured film loses at its open edges what a strip 1 in wide takes: it hangs, drips and is struck off", "Una capa vertida pierde en los cantos abiertos lo que lleva una franja de 25 mm: cuelga, gotea y se retira"));

        /// <summary>mL.</summary>
        public static readonly Assumption LargestBatch = Trade(MlPerUsQuart,
            v => v.Say("One quart is mixed at a time", "Se mezcla un cuarto de galón (946 mL) de una vez"));

        /// <summary>mL between the marks of a mixing cup.</summary>
        public static Assumption CupStep(UnitSystem units) => units == UnitSystem.Us
            ? Trade(0.25 * MlPerUsFluidOunce, v => v.Say("A mixing cup is marked every 1/4 fl oz", "El vaso está marcado cada 1/4 fl oz"))
            : Trade(10, v => v.Say("A mixing cup is marked every 10 mL", "El vaso está marcado cada 10 mL"));

        /// <summary>Grams.</summary>
        public static readonly Assumption ScaleStep = Trade(1, v => v.Say("The scale shows whole grams", "La balanza muestra gramos enteros"));
    }

    public static class Aims
    {
        /// <summary>Share of the open time.</summary>
        public static readonly Assumption MarginShare = Trade(0.20,
            v => v.Say("A fifth of the open time is kept in hand", "Se guarda una quinta parte del tiempo abierto"));

        /// <summary>
        /// m². Big islands are done in sections of about 4 ft × 2 ft; a quarter more leaves the plan room to fit them to a top.
        /// </summary>
        public static readonly Assumption LargestSection = Trade(10 * SquareMetresPerSquareFoot,
            v => v.Say("Sections of about 4 ft × 2 ft, at most 10 ft²", "Secciones de unos 1,2 m × 0,6 m, como mucho 0,93 m²"));

        /// <summary>
        /// Metres. The published reach is from a wall at the shoulders to the finger tip, 26.7 in; the handle and frame
        /// of a short roller add about 10 in beyond the hand (common practice, no source); rounded down to 36 in.
        /// </summary>
        public static readonly Assumption Reach = new(36 * MetresPerInch,
            v => v.Say("Reach 26.7 in (5th percentile woman), and about 10 in of roller", "Alcance 68 cm (mujer, percentil 5) y unos 25 cm de rodillo"),
            Sources.MilStd1472);
    }

    /// <summary>How much a day's work differs from what was planned, as the spread of the logarithm.</summary>
    public static class Spread
    {
        /// <summary>Share, about the coefficient of variation.</summary>
        public static readonly Assumption Day = Trade(0.10,
            v => v.Say("A person's pace differs by about 10 % from day to day", "El ritmo de una persona varía cerca de un 10 % de un día a otro"));

        /// <summary>Share.</summary>
        public static readonly Assumption Section = Trade(0.15,
            v => v.Say("and by about 15 % from one section to the next", "y cerca de un 15 % de una sección a otra"));

        /// <summary>Share.</summary>
        public static readonly Assumption Mixing = Trade(0.20,
            v => v.Say("Mixing a batch differs by about 20 %", "Preparar una mezcla varía cerca de un 20 %"));

        /// <summary>Share.</summary>
        public static readonly Assumption SheetOpenTime = Trade(0.15,
            v => v.Say("Open time off a data sheet differs by about 15 % in a real room", "El tiempo abierto de una ficha técnica varía cerca de un 15 % en una sala real"));

        /// <summary>Share.</summary>
        public static readonly Assumption GuessedOpenTime = Trade(0.30,
            v => v.Say("Open time that is a guess differs by about 30 %", "El tiempo abierto supuesto varía cerca de un 30 %"));

        /// <summary>Share.</summary>
        public static readonly Assumption Loss = Trade(0.25,
            v => v.Say("What tools, cups and edges keep differs by about 25 %", "Lo que retienen útiles, vasos y cantos varía cerca de un 25 %"));
    }

    /// <summary>Metres: a built-up laminate or a 1 1/2 in slab.</summary>
    public static readonly Assumption Thickness = Trade(1.5 * MetresPerInch,
        v => v.Say("Tops are 1 1/2 in thick", "Las cubiertas tienen 38 mm de grueso"));

    /// <summary>Metres: the smallest step of a common tape.</summary>
    public static Assumption TapeStep(UnitSystem units) => units == UnitSystem.Us
        ? Trade(MetresPerInch / 16, v => v.Say("The tape is read to 1/16 in", "La cinta se lee a 1/16 in"))
        : Trade(0.001, v => v.Say("The tape is read to 1 mm", "La cinta se lee a 1 mm"));

    /// <summary>Kelvin.</summary>
    public static readonly Assumption DewMargin = new(3,
        v => v.Say("The surface stays 3 °C above the dew point", "La superficie queda 3 °C por encima del punto de rocío"),
        Sources.Iso8502Part4);

    /// <summary>°C: a cup that burns the hand.</summary>
    public static readonly Assumption HottestMix = new(60,
        v => v.Say("A batch is done when it reaches 60 °C", "Una mezcla se da por acabada al llegar a 60 °C"),
        Sources.CautiousGuess);

    /// <summary>Data sheets are read at 23 °C and 50 % humidity (ISO 9514, from memory).</summary>
    public static readonly Assumption SheetHumidity = Trade(0.5,
        v => v.Say("The data sheet's times hold at 50 % humidity", "Los tiempos de la ficha técnica valen con 50 % de humedad"));

    /// <summary>°C.</summary>
    public static readonly Assumption SheetTemperature = Trade(23,
        v => v.Say("The data sheet's times hold at 23 °C", "Los tiempos de la ficha técnica valen a 23 °C"));

    /// <summary>Seconds.</summary>
    public static readonly Assumption WipeOver = Trade(600, v => v.Say("A solvent wipe evaporates within 10 minutes", "Una pasada de disolvente se evapora en 10 minutos"));

    /// <summary>g/mL: as water.</summary>
    public static readonly Assumption ThinnerDensity = Trade(1, v => v.Say("Thinner as dense as water", "Diluyente tan denso como el agua"));

    private static Assumption Trade(double value, Phrase note) => new(value, note, Sources.Trade);
}
