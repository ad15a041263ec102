namespace Lapwise.Core.Explain;

/// <summary>The one registry of what numbers rest on; <c>docs/sources.md</c> is written from it.</summary>
public static partial class Sources
{
    public static readonly Source Geometry = new("geometry", v => v.Say("Plane geometry", "Geometría plana"), SourceStanding.Derived);

    public static readonly Source AsEntered = new("entered",
        v => v.Say("Your own figures, or the product's data sheet", "Sus propios datos, o la ficha técnica del producto"),
        SourceStanding.Entered);

    public static readonly Source Trade = new("trade", v => v.Say("No source", "Sin fuente"), SourceStanding.CommonPractice);

    public static readonly Source CautiousGuess = new("cautious-guess",
        v => v.Say("A cautious figure of this program where none was given", "Cifra prudente de este programa cuando no se dio ninguna"),
        SourceStanding.Assumed);

    public static readonly Source Handbook44 = new("nist-hb44", "NIST Handbook 44, Appendix C",
        v => v.Say("the US gallon is 231 cubic inches", "el galón de EE. UU. son 231 pulgadas cúbicas"), SourceStanding.Read);

    public static readonly Source AlduchovEskridge = new("alduchov-eskridge-1996", "Alduchov & Eskridge, J. Appl. Meteor. 35 (1996) 601-609",
        v => v.Say("Magnus form of the saturation vapour pressure over water", "forma de Magnus de la presión de vapor de saturación sobre agua"),
        SourceStanding.ReadSecondHand);

    public static readonly Source Iso8502Part4 = new("iso-8502-4", "ISO 8502-4",
        v => v.Say("probability of condensation before paint application; surface 3 °C above the dew point", "probabilidad de condensación antes de pintar; superficie 3 °C sobre el punto de rocío"),
        SourceStanding.ReadSecondHand);

    public static readonly Source MilHdbk1110 = new("mil-hdbk-1110", "MIL-HDBK-1110 (UFC 3-190-06)",
        v => v.Say("surface 5 °F above the dew point and rising, measured about every 4 h (9.6.6); pot life falls with heat and batch size (7.3.1.1); thinning leaves less dry film (9.6.8.3)",
            "superficie 5 °F sobre el punto de rocío y en aumento, medida cada 4 h más o menos (9.6.6); la vida de la mezcla cae con el calor y el tamaño de la mezcla (7.3.1.1); diluir deja menos película seca (9.6.8.3)"),
        SourceStanding.Read);

    public static readonly Source Ufgs09971 = new("ufgs-09971", "UFGS-09971, 3.7.1.3",
        v => v.Say("each 10 °C (18 °F) rise about halves pot life, each such drop about doubles it; high humidity shortens the pot life of polyurethane",
            "cada 10 °C (18 °F) más reducen a la mitad la vida de la mezcla y cada 10 °C menos la doblan; la humedad alta acorta la del poliuretano"),
        SourceStanding.Read);

    public static readonly Source Arrhenius = new("arrhenius",
        v => v.Say("Arrhenius rate law, drawn through the two points of the data sheet", "Ley de velocidad de Arrhenius, trazada por los dos puntos de la ficha técnica"),
        SourceStanding.Derived);

    public static readonly Source HeatBalance = new("heat-balance",
        v => v.Say("Heat balance of a stirred mass with an Arrhenius reaction of first order, fitted to the data sheet's lives", "Balance de calor de una masa agitada con reacción de Arrhenius de primer orden, ajustado a los tiempos de la ficha técnica"),
        SourceStanding.Derived);

    public static readonly Source FilmClosing = new("kiil-2006", "S. Kiil, Prog. Org. Coat. 57 (2006) 236-250; Huisman et al., Phys. Rev. Lett. 131 (2023)",
        v => v.Say("a water-borne film dries at a constant rate until polymer fills 74 % of it, then at a falling one that humidity hardly touches (abstracts)",
            "una película al agua seca a velocidad constante hasta que el polímero llena el 74 %, y luego a velocidad decreciente que la humedad apenas afecta (resúmenes)"),
        SourceStanding.Read);

    public static readonly Source NioshPocketGuide = new("niosh-2005-151", "NIOSH Pocket Guide to Chemical Hazards (2005-151)",
        v => v.Say("acetone: REL 250 ppm (590 mg/m³), IDLH 2500 ppm, 2.5 to 12.8 % flammable; HDI: REL 0.005 ppm, ceiling 0.020 ppm; the flammable range is recalled",
            "acetona: REL 250 ppm (590 mg/m³), IDLH 2500 ppm, inflamable de 2,5 a 12,8 %; HDI: REL 0,005 ppm, techo 0,020 ppm; el margen inflamable es de memoria"),
        SourceStanding.Read);

    public static readonly Source NioshRecalled = new("niosh-npg-recalled", "NIOSH Pocket Guide to Chemical Hazards",
        v => v.Say("other solvents: limits and flammable range", "otros disolventes: límites y margen inflamable"), SourceStanding.FromMemory);

    public static readonly Source OshaZ1 = new("29-cfr-1910-1000", "29 CFR 1910.1000, Table Z-1",
        v => v.Say("acetone: PEL 1000 ppm (2400 mg/m³)", "acetona: PEL 1000 ppm (2400 mg/m³)"), SourceStanding.Read);

    public static readonly Source AcgihTlv = new("acgih-tlv", "ACGIH TLV",
        v => v.Say("acetone 250 ppm, 500 ppm over 15 min; HDI 0.005 ppm; it changes from edition to edition", "acetona 250 ppm, 500 ppm en 15 min; HDI 0,005 ppm; cambia de una edición a otra"), SourceStanding.ReadSecondHand);

    public static readonly Source AcgihVentilation = new("acgih-dilution", "ACGIH, Industrial Ventilation, dilution chapter",
        v => v.Say("Q′ = 403 · SG · ER · 10⁶ / (MW · C); well-mixed room V dC/dt = G − Q C", "Q′ = 403 · SG · ER · 10⁶ / (MW · C); sala bien mezclada V dC/dt = G − Q C"), SourceStanding.ReadSecondHand);

    public static readonly Source Voc40Cfr59 = new("40-cfr-59", "40 CFR 59.406",
        v => v.Say("VOC less water and exempt = (Ws − Ww − Wec) / (Vm − Vw − Vec), of the coating as thinned and mixed", "COV sin agua ni exentos = (Ws − Ww − Wec) / (Vm − Vw − Vec), del producto diluido y mezclado"), SourceStanding.FromMemory);

    public static readonly Source FilmSpread = new("film-spread",
        v => v.Say("Spreading-rate identity: 1 L covers 1 m² at 1000 µm; 1604 ft²·mil per US gallon", "Identidad de rendimiento: 1 L cubre 1 m² a 1000 µm; 1604 ft²·mil por galón de EE. UU."),
        SourceStanding.ReadSecondHand);

    public static readonly Source ExactSearch = new("exact-search",
        v => v.Say("Exact search: every choice that could be better is counted", "Búsqueda exacta: se cuentan todas las opciones que podrían ser mejores"),
        SourceStanding.Derived);

    public static readonly Source SagTest = new("astm-d4400", "ASTM D4400",
        v => v.Say("names the test of the thickest wet film that does not sag; the figure is the data sheet's", "nombra el ensayo de la película húmeda más gruesa que no se descuelga; la cifra es de la ficha técnica"),
        SourceStanding.FromMemory);

    public static readonly Source TapeTest = new("astm-d3359", "ASTM D3359",
        v => v.Say("names the tape test of adhesion; how long the patch hardens first is the data sheet's recoat", "nombra el ensayo de adherencia con cinta; cuánto endurece antes el parche es el repintado de la ficha"),
        SourceStanding.FromMemory);

    public static readonly Source DryStages = new("astm-d1640", "ASTM D1640; ISO 9117",
        v => v.Say("names of the stages of drying and how each is told; the times are the data sheet's", "nombres de las etapas de secado y cómo se reconoce cada una; los tiempos son de la ficha técnica"),
        SourceStanding.FromMemory);

    public static readonly Source GhsStatements = new("un-ghs", "UN Globally Harmonized System (GHS), annex 3",
        v => v.Say("signal words and hazard statements by code; the product's own label comes first", "palabras de advertencia e indicaciones de peligro por código; manda la etiqueta del propio producto"),
        SourceStanding.FromMemory);

    public static readonly Source OldSurfaces = new("29-cfr-1926-1153", "29 CFR 1926.1153; 40 CFR 745; 40 CFR 763",
        v => v.Say("silica in the dust of stone and tile; lead and asbestos in old work", "sílice en el polvo de piedra y azulejo; plomo y amianto en lo viejo"),
        SourceStanding.FromMemory);

    public static readonly Source RespiratoryProtection = new("29-cfr-1910-134", "29 CFR 1910.134",
        v => v.Say("respirator programme: medical evaluation, fit test, cartridge change schedule", "programa de respiradores: evaluación médica, prueba de ajuste, cambio programado de cartuchos"),
        SourceStanding.FromMemory);

    public static readonly Source Bowditch = new("bowditch", "J. Mahun, Open Access Surveying Library, traverse computations, E",
        v => v.Say("compass (Bowditch) rule of traverse adjustment", "regla de la brújula (Bowditch) para compensar un itinerario"), SourceStanding.Read);

    public static readonly Source MilStd1472 = new("mil-std-1472g", "MIL-STD-1472G, Appendix B",
        v => v.Say("functional reach of the 5th percentile woman, 26.7 in, as printed in NUREG-0700 Rev. 3, Table 11.4",
            "alcance funcional de la mujer de percentil 5, 67,7 cm, según NUREG-0700 Rev. 3, tabla 11.4"),
        SourceStanding.Read);

    public static readonly Source Wilson = new("wilson-1927", "E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927) 209-212",
        v => v.Say("interval for a share counted in trials", "intervalo de una proporción contada en pruebas"), SourceStanding.FromMemory);

    public static IReadOnlyList<Source> All { get; } =
    [
        Geometry, AsEntered, Trade, CautiousGuess, Handbook44, AlduchovEskridge, Iso8502Part4, MilHdbk1110, Ufgs09971,
        Arrhenius, HeatBalance, FilmClosing, FilmSpread,
        NioshPocketGuide, NioshRecalled, OshaZ1, AcgihTlv, AcgihVentilation, Voc40Cfr59, ExactSearch, SagTest, TapeTest, DryStages, GhsStatements, OldSurfaces, RespiratoryProtection, Bowditch, MilStd1472, Wilson,
    ];

    /// <summary>The standing of a source in words.</summary>
    public static string Say(SourceStanding standing, Voice voice) => standing switch
    {
        SourceStanding.Read => voice.Say("read", "leída"),
        SourceStanding.ReadSecondHand => voice.Say("read in a document that quotes it", "leída en un documento que la cita"),
        SourceStanding.FromMemory => voice.Say("from memory: confirm before citing", "de memoria: confirmar antes de citar"),
        SourceStanding.CommonPractice => voice.Say("common practice", "práctica común"),
        SourceStanding.Derived => voice.Say("provable on the spot", "demostrable al momento"),
        SourceStanding.Entered => voice.Say("as entered", "tal como se anotó"),
        SourceStanding.Assumed => voice.Say("assumed", "supuesta"),
        _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, null),
    };
}
