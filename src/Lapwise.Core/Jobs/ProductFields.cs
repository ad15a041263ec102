using Lapwise.Core.Explain;

namespace Lapwise.Core.Jobs;

/// <summary>How one value of a product is entered.</summary>
public abstract record ProductEntry
{
    private ProductEntry() { }

    /// <summary>Plain words.</summary>
    public sealed record Words : ProductEntry;
    /// <summary>A quantity with its unit, as a person writes it.</summary>
    public sealed record Quantity : ProductEntry;
    /// <summary>A bare number.</summary>
    public sealed record Number : ProductEntry;
    public sealed record YesNo : ProductEntry;
    /// <summary>One of a few, each as the document writes it and as a person says it.</summary>
    public sealed record OneOf(IReadOnlyList<(string Written, Func<Voice, string> Words)> Options) : ProductEntry;
    /// <summary>Any number of a few.</summary>
    public sealed record AnyOf(IReadOnlyList<(string Written, Func<Voice, string> Words)> Options) : ProductEntry;
    /// <summary>Quantities in a row, parted by semicolons.</summary>
    public sealed record Quantities : ProductEntry;
}

/// <summary>One value of a product document.</summary>
/// <param name="Path">As in a fault, as <c>mix.a</c>; within a repeated group below its item.</param>
/// <param name="Why">One line of what it is for.</param>
/// <param name="Example">As it might be written.</param>
public sealed record ProductField(string Path, ProductEntry Entry, Func<Voice, string> Name, Func<Voice, string> Why, string Example = "");

/// <summary>Fields that belong together on a data sheet.</summary>
/// <param name="Repeats">Path of the list whose items these fields describe; null: they stand once.</param>
public sealed record ProductGroup(Func<Voice, string> Name, Func<Voice, string> Why, IReadOnlyList<ProductField> Fields, string? Repeats = null);

/// <summary>Every value of a product document as it is asked for, in the order of a data sheet.</summary>
public static class ProductFields
{
    private static readonly ProductEntry Words = new ProductEntry.Words();
    private static readonly ProductEntry Quantity = new ProductEntry.Quantity();
    private static readonly ProductEntry Number = new ProductEntry.Number();
    private static readonly ProductEntry YesNo = new ProductEntry.YesNo();

    public static IReadOnlyList<ProductGroup> All { get; } =
    [
        new(v => v.Say("What it is", "Qué es"), v => v.Say("How jobs and people call it.", "Cómo lo llaman los trabajos y las personas."),
        [
            new("name", Words, v => v.Say("Name", "Nombre"), v => v.Say("Shown on plans and tickets.", "Aparece en planes y boletas.")),
            new("id", Words, v => v.Say("Short id", "Id corto"), v => v.Say("Jobs name it by this; it stays when the name changes.", "Los trabajos lo nombran así; no cambia aunque cambie el nombre."), "clear-fast"),
            new("method", OneOf(
                ("rolled", v => v.Say("rolled wet, then dry", "con rodillo húmedo y luego seco")),
                ("poured", v => v.Say("poured and levelled", "vertido y nivelado")),
                ("wiped", v => v.Say("brushed or wiped", "con brocha o paño"))), v => v.Say("How it is applied", "Cómo se aplica"), v => v.Say("Decides how a top is cut into sections, or not at all.", "Decide cómo se divide una cubierta en secciones, o si no se divide.")),
            new("wholeTopAtOnce", YesNo, v => v.Say("Each face as a whole", "Cada cara entera"), v => v.Say("No lap may lie on a face, as some bases ask.", "Ninguna unión puede caer sobre una cara, como piden algunas bases.")),
            new("breakAllowed", YesNo, v => v.Say("Planned joints allowed", "Juntas previstas permitidas"), v => v.Say("Whether a taped joint may cross a top in this coat.", "Si una junta con cinta puede cruzar la cubierta en esta capa.")),
        ]),
        new(v => v.Say("Mix", "Mezcla"), v => v.Say("The ratio decides whether it cures; the densities turn volume into mass.", "La proporción decide si cura; las densidades pasan de volumen a masa."),
        [
            new("mix.by", OneOf(("volume", v => v.Say("by volume", "por volumen")), ("mass", v => v.Say("by mass", "por masa"))), v => v.Say("Parts are", "Las partes son"), v => v.Say("As the sheet gives the ratio.", "Como da la proporción la ficha.")),
            new("mix.a", Number, v => v.Say("Parts of A", "Partes de A"), v => v.Say("The resin.", "La resina."), "2"),
            new("mix.b", Number, v => v.Say("Parts of B", "Partes de B"), v => v.Say("The hardener.", "El endurecedor."), "1"),
            new("mix.c", Number, v => v.Say("Parts of C", "Partes de C"), v => v.Say("Only of a three-part product.", "Solo si tiene tres partes.")),
            new("densityA", Quantity, v => v.Say("Density of A", "Densidad de A"), v => v.Say("To weigh A instead of measuring it.", "Para pesar A en vez de medirlo."), "1.04 g/mL"),
            new("densityB", Quantity, v => v.Say("Density of B", "Densidad de B"), v => v.Say("To weigh B instead of measuring it.", "Para pesar B en vez de medirlo."), "1.11 g/mL"),
            new("densityC", Quantity, v => v.Say("Density of C", "Densidad de C"), v => v.Say("Only of a three-part product.", "Solo si tiene tres partes.")),
            new("stirFirst", Words, v => v.Say("Stir before measuring", "Remover antes de medir"), v => v.Say("What settles, in the sheet's words; blank: nothing.", "Lo que se asienta, en palabras de la ficha; vacío: nada.")),
            new("strain", Words, v => v.Say("Strain through", "Colar por"), v => v.Say("In the sheet's words; blank: it is not strained.", "En palabras de la ficha; vacío: no se cuela.")),
            new("induction", Quantity, v => v.Say("Wait after mixing", "Espera tras mezclar"), v => v.Say("Between mixing and first use; it eats pot life.", "Entre la mezcla y el primer uso; consume vida útil."), "5 min"),
            new("largestBatch", Quantity, v => v.Say("Largest batch", "Mezcla más grande"), v => v.Say("A large mass heats itself; the sheet may set a limit.", "Una masa grande se calienta sola; la ficha puede poner un límite."), "48 fl oz"),
        ]),
        new(v => v.Say("Thinner", "Diluyente"), v => v.Say("The one the sheet permits; blank: none may be added.", "El que permite la ficha; vacío: no se puede añadir."),
        [
            new("thinner.name", Words, v => v.Say("What it is", "Qué es"), v => v.Say("Another one is another product.", "Otro distinto es otro producto.")),
            new("thinner.limit", Quantity, v => v.Say("Most of it", "Lo máximo"), v => v.Say("As a share of the mix; more is never planned.", "Como parte de la mezcla; nunca se planea más."), "2 %"),
            new("thinner.density", Quantity, v => v.Say("Its density", "Su densidad"), v => v.Say("Blank: that of water.", "Vacío: la del agua."), "1.00 g/mL"),
            new("thinner.is", OneOf(
                ("water", v => v.Say("water", "agua")),
                ("solvent", v => v.Say("solvent", "disolvente")),
                ("exempt", v => v.Say("exempt solvent", "disolvente exento"))), v => v.Say("Counts as", "Cuenta como"), v => v.Say("In the VOC as applied; blank: solvent, which may burn.", "En el COV tal como se aplica; vacío: disolvente, que puede arder.")),
        ]),
        new(v => v.Say("Film", "Película"), v => v.Say("How thick it goes on and how much of it stays.", "Con qué espesor se aplica y cuánto queda."),
        [
            new("volumeSolids", Quantity, v => v.Say("Volume solids", "Sólidos en volumen"), v => v.Say("The share of the mix that stays as dry film.", "La parte de la mezcla que queda como película seca."), "62 %"),
            new("wetFilm.least", Quantity, v => v.Say("Thinnest wet film", "Película húmeda mínima"), v => v.Say("Thinner, it does not flow out.", "Más fina, no se nivela."), "6 mil"),
            new("wetFilm.most", Quantity, v => v.Say("Thickest wet film", "Película húmeda máxima"), v => v.Say("Thicker, it traps what should leave it.", "Más gruesa, encierra lo que debe salir."), "7.5 mil"),
            new("sagLimit", Quantity, v => v.Say("Sag limit", "Límite de descuelgue"), v => v.Say("Thickest film that holds on a splash or a panel.", "La película más gruesa que aguanta en vertical."), "8 mil"),
        ]),
        new(v => v.Say("Pot life", "Vida útil de la mezcla"), v => v.Say("One time at one temperature, or two; two fix how it changes with heat.", "Un tiempo a una temperatura, o dos; con dos se fija cómo cambia con el calor."),
        [
            new("time", Quantity, v => v.Say("Time", "Tiempo"), v => v.Say("As the sheet says.", "Como dice la ficha."), "45 min"),
            new("at", Quantity, v => v.Say("At", "A"), v => v.Say("The temperature it holds at.", "La temperatura a la que vale."), "73 °F"),
        ], "potLife"),
        new(v => v.Say("Pot life of a stated mass", "Vida útil de una masa dada"), v => v.Say("Only where the sheet says the mass; then the heat of a large batch is counted.", "Solo si la ficha dice la masa; entonces se cuenta el calor de una mezcla grande."),
        [
            new("mass", Quantity, v => v.Say("Mass", "Masa"), v => v.Say("All parts mixed.", "Todas las partes mezcladas."), "100 g"),
            new("time", Quantity, v => v.Say("Time", "Tiempo"), v => v.Say("As the sheet says.", "Como dice la ficha."), "40 min"),
            new("at", Quantity, v => v.Say("At", "A"), v => v.Say("Material and room at the start.", "Material y sala al empezar."), "77 °F"),
        ], "potLifeOfMass"),
        new(v => v.Say("How a batch ends", "Cómo acaba una mezcla"), v => v.Say("So that a batch that only looks usable is not used.", "Para no usar una mezcla que solo parece buena."),
        [
            new("endsBy", OneOf(
                ("gels", v => v.Say("it gels", "se gelifica")),
                ("overheats", v => v.Say("it overheats", "se sobrecalienta")),
                ("hidden", v => v.Say("hidden: only the clock tells", "oculto: solo lo dice el reloj"))), v => v.Say("It ends when", "Acaba cuando"), v => v.Say("Hidden: it still rolls, and fails later.", "Oculto: aún se aplica y falla después.")),
            new("heatOfMix", Quantity, v => v.Say("Heat of the reaction", "Calor de la reacción"), v => v.Say("Blank: a stated default.", "Vacío: un valor por defecto declarado."), "350 J/g"),
            new("hottestMix", Quantity, v => v.Say("Hottest mix", "Mezcla más caliente"), v => v.Say("Above it the batch is done; blank: a cautious figure.", "Por encima, la mezcla se acabó; vacío: una cifra prudente."), "55 °C"),
        ]),
        new(v => v.Say("Open time", "Tiempo abierto"), v => v.Say("How long the film on the top still takes a lap. Every margin rests on it.", "Cuánto tiempo la película aún admite una unión. Todo margen se apoya en él."),
        [
            new("time", Quantity, v => v.Say("Time", "Tiempo"), v => v.Say("As the sheet says.", "Como dice la ficha."), "11 min"),
            new("at", Quantity, v => v.Say("At", "A"), v => v.Say("The temperature it holds at.", "La temperatura a la que vale."), "73 °F"),
        ], "openTime"),
        new(v => v.Say("How the film closes", "Cómo se cierra la película"), v => v.Say("Blank: no effect of humidity, air or thickness is claimed.", "Vacío: no se afirma efecto de humedad, aire ni espesor."),
        [
            new("drying.carrier", OneOf(("water", v => v.Say("water leaves it", "se va el agua")), ("solvent", v => v.Say("solvent leaves it", "se va el disolvente"))), v => v.Say("What leaves it", "Qué se evapora"), v => v.Say("Water leaves more slowly in humid air.", "El agua se va más despacio con aire húmedo.")),
            new("drying.evaporation", Quantity, v => v.Say("Share that is evaporation", "Parte que es evaporación"), v => v.Say("The rest is reaction.", "El resto es reacción."), "60 %"),
            new("drying.humidity", Quantity, v => v.Say("Humidity of the sheet's times", "Humedad de los tiempos de la ficha"), v => v.Say("Blank: 50 %.", "Vacío: 50 %."), "50 %"),
            new("dryToTouch.time", Quantity, v => v.Say("Dry to touch after", "Seco al tacto tras"), v => v.Say("When a light touch leaves no mark.", "Cuando un toque suave no deja marca."), "2 h"),
            new("dryToTouch.at", Quantity, v => v.Say("Dry to touch, at", "Seco al tacto, a"), v => v.Say("The temperature it holds at.", "La temperatura a la que vale."), "73 °F"),
        ]),
        new(v => v.Say("Next coat", "Capa siguiente"), v => v.Say("The window without sanding.", "La ventana sin lijar."),
        [
            new("recoat.earliest", Quantity, v => v.Say("Earliest", "Lo antes"), v => v.Say("Sooner, it wrinkles or traps what should leave.", "Antes, se arruga o encierra lo que debe salir."), "4 h"),
            new("recoat.latest", Quantity, v => v.Say("Latest", "Lo más tarde"), v => v.Say("Later, it is sanded first.", "Después, primero se lija."), "24 h"),
            new("recoat.at", Quantity, v => v.Say("Both at", "Ambos a"), v => v.Say("The temperature they hold at.", "La temperatura a la que valen."), "73 °F"),
            new("recoat.sanding", Words, v => v.Say("How it is sanded", "Cómo se lija"), v => v.Say("In the sheet's words.", "En palabras de la ficha."), "320"),
            new("recoat.alwaysSand", YesNo, v => v.Say("Always sand", "Lijar siempre"), v => v.Say("Where the sheet asks for it within the window too.", "Si la ficha lo pide también dentro de la ventana.")),
        ]),
        new(v => v.Say("When it may be used", "Cuándo se puede usar"), v => v.Say("What the customer is told.", "Lo que se le dice al cliente."),
        [
            new("usableFrom.lightUse", Quantity, v => v.Say("Light use", "Uso ligero"), v => v.Say("Walked past, wiped, nothing dragged.", "Se limpia; nada se arrastra."), "48 h"),
            new("usableFrom.water", Quantity, v => v.Say("Standing water", "Agua estancada"), v => v.Say("Blank: the sheet does not say.", "Vacío: la ficha no lo dice."), "72 h"),
            new("usableFrom.fullUse", Quantity, v => v.Say("Full use", "Uso pleno"), v => v.Say("Pots, boards, appliances.", "Ollas, tablas, aparatos."), "7 d"),
            new("usableFrom.fullCure", Quantity, v => v.Say("Full cure", "Curado total"), v => v.Say("When it no longer hardens; blank: the sheet does not say.", "Cuando ya no endurece; vacío: la ficha no lo dice."), "30 d"),
            new("usableFrom.at", Quantity, v => v.Say("All at", "Todo a"), v => v.Say("Blank: 23 °C.", "Vacío: 23 °C."), "23 °C"),
        ]),
        new(v => v.Say("Room", "Sala"), v => v.Say("Outside it the plan is shown as not working.", "Fuera de ahí el plan se muestra como que no funciona."),
        [
            new("limits.airLeast", Quantity, v => v.Say("Coldest air", "Aire más frío"), v => v.Say("Colder, it hardly cures.", "Más frío, apenas cura."), "60 °F"),
            new("limits.airMost", Quantity, v => v.Say("Warmest air", "Aire más caliente"), v => v.Say("Warmer, the open time closes.", "Más caliente, se cierra el tiempo abierto."), "85 °F"),
            new("limits.surfaceLeast", Quantity, v => v.Say("Coldest surface", "Superficie más fría"), v => v.Say("Blank: as the air.", "Vacío: como el aire.")),
            new("limits.surfaceMost", Quantity, v => v.Say("Warmest surface", "Superficie más caliente"), v => v.Say("Blank: as the air.", "Vacío: como el aire.")),
            new("limits.humidityMost", Quantity, v => v.Say("Highest humidity", "Humedad máxima"), v => v.Say("Above it the film hazes or stays soft.", "Por encima, la película se vela o queda blanda."), "75 %"),
            new("limits.dewMargin", Quantity, v => v.Say("Above the dew point by", "Sobre el punto de rocío por"), v => v.Say("Blank: 3 °C.", "Vacío: 3 °C."), "5 °F"),
        ]),
        new(v => v.Say("After a pour", "Después de verter"), v => v.Say("Only for what is poured; times count from when it lies spread.", "Solo para lo vertido; los tiempos cuentan desde que está extendido."),
        [
            new("pour.levelWithin", Quantity, v => v.Say("Levelled within", "Nivelado en"), v => v.Say("After that it no longer moves.", "Después ya no se mueve."), "12 min"),
            new("pour.bubblePassesAt", new ProductEntry.Quantities(), v => v.Say("Bubbles brought out at", "Burbujas fuera a los"), v => v.Say("In rising order, parted by semicolons.", "En orden, separados por punto y coma."), "10 min; 25 min"),
            new("pour.scrapeDrips.from", Quantity, v => v.Say("Drips scraped from", "Goteos raspados desde"), v => v.Say("Sooner, they run again.", "Antes, vuelven a correr."), "3 h"),
            new("pour.scrapeDrips.to", Quantity, v => v.Say("Drips scraped until", "Goteos raspados hasta"), v => v.Say("Later, they must be sanded.", "Después, hay que lijarlos."), "6 h"),
        ]),
        new(v => v.Say("Kits", "Juegos"), v => v.Say("The packs it is sold in; the cheapest set is bought.", "Los envases en que se vende; se compra el conjunto más barato."),
        [
            new("size", Quantity, v => v.Say("Size", "Tamaño"), v => v.Say("All parts together.", "Todas las partes juntas."), "24 fl oz"),
            new("price", Number, v => v.Say("Price", "Precio"), v => v.Say("Of one kit.", "De un juego."), "84.00"),
            new("currency", Words, v => v.Say("Currency", "Moneda"), v => v.Say("Blank: the shop's own.", "Vacío: la del taller."), "USD"),
        ], "kits"),
        new(v => v.Say("Hazards", "Peligros"), v => v.Say("What its safety data sheet warns of; the cautions stand beside every number they touch.", "Lo que advierte su ficha de seguridad; los avisos van junto a cada número que tocan."),
        [
            new("hazards", new ProductEntry.AnyOf([.. Enum.GetValues<Hazard>().Select(h => (char.ToLowerInvariant(h.ToString()[0]) + h.ToString()[1..], (Func<Voice, string>)(v => NameOf(h, v))))]), v => v.Say("It has", "Contiene o produce"), v => v.Say("Mark all that its sheet names.", "Marque todo lo que nombra su ficha.")),
            new("label", new ProductEntry.Quantities(), v => v.Say("Statements on its label", "Indicaciones de su etiqueta"), v => v.Say("Their codes, parted by semicolons; blank: the usual ones are shown as such.", "Sus códigos, separados por punto y coma; vacío: se muestran las habituales como tales."), "H226; H317"),
            new("solvent", OneOf([.. Enum.GetValues<SolventName>().Select(s => (char.ToLowerInvariant(s.ToString()[0]) + s.ToString()[1..], (Func<Voice, string>)(v => NameOf(s, v))))]), v => v.Say("Its vapour is mostly", "Su vapor es sobre todo"), v => v.Say("Blank: no exposure is worked out.", "Vacío: no se calcula la exposición.")),
        ]),
        new(v => v.Say("VOC", "COV"), v => v.Say("Of each part as it stands in its can; blank: no VOC is worked out.", "De cada parte tal como viene; vacío: no se calcula el COV."),
        [
            .. VocOf("a", "A"), .. VocOf("b", "B"), .. VocOf("c", "C"),
        ]),
        new(v => v.Say("What earlier jobs took", "Lo que llevaron trabajos anteriores"), v => v.Say("From your own jobs: where they took more than is counted, the difference is bought as a reserve.", "De sus propios trabajos: si llevaron más de lo que se cuenta, la diferencia se compra como reserva."),
        [
            new("area", Quantity, v => v.Say("Area covered", "Área recubierta"), v => v.Say("Film area, edges with it.", "Área de película, con los cantos."), "62 ft²"),
            new("wetFilm", Quantity, v => v.Say("At a wet film of", "Con película húmeda de"), v => v.Say("As read with the comb.", "Según el peine."), "6.5 mil"),
            new("used", Quantity, v => v.Say("Used", "Usado"), v => v.Say("All parts mixed, thinner left out.", "Todas las partes mezcladas, sin el diluyente."), "34 fl oz"),
        ], "measuredUse"),
    ];

    private static ProductField[] VocOf(string part, string name) =>
    [
        new($"voc.{part}.voc", Quantity, v => v.Say($"VOC in {name}", $"COV en {name}"), v => v.Say("In a volume of it, water counted.", "En un volumen de ella, contando el agua."), "120 g/L"),
        new($"voc.{part}.water", Quantity, v => v.Say($"Water in {name}", $"Agua en {name}"), v => v.Say("Share of its volume; blank: none.", "Parte de su volumen; vacío: nada."), "45 %"),
        new($"voc.{part}.exempt", Quantity, v => v.Say($"Exempt solvent in {name}", $"Disolvente exento en {name}"), v => v.Say("Share of its volume; blank: none.", "Parte de su volumen; vacío: nada."), "0 %"),
    ];

    private static ProductEntry.OneOf OneOf(params (string Written, Func<Voice, string> Words)[] options) => new(options);

    private static string NameOf(SolventName solvent, Voice voice) => solvent switch
    {
        SolventName.Acetone => voice.Say("acetone", "acetona"),
        SolventName.Isopropanol => voice.Say("isopropyl alcohol", "alcohol isopropílico"),
        SolventName.Ethanol => voice.Say("ethyl alcohol", "alcohol etílico"),
        SolventName.Xylene => voice.Say("xylene", "xileno"),
        SolventName.ButylAcetate => voice.Say("n-butyl acetate", "acetato de n-butilo"),
        SolventName.Mek => voice.Say("methyl ethyl ketone", "metil etil cetona"),
        _ => solvent.ToString(),
    };

    private static string NameOf(Hazard hazard, Voice voice) => hazard switch
    {
        Hazard.Isocyanate => voice.Say("isocyanates", "isocianatos"),
        Hazard.EpoxyAmine => voice.Say("epoxy resin or amine hardener", "resina epoxi o endurecedor amínico"),
        Hazard.FlammableVapour => voice.Say("vapour that burns", "vapor inflamable"),
        Hazard.SolventVapour => voice.Say("solvent vapour", "vapor de disolvente"),
        Hazard.HotMix => voice.Say("a mix that heats itself", "mezcla que se calienta sola"),
        Hazard.SandingDust => voice.Say("dust when sanded", "polvo al lijar"),
        Hazard.SkinSensitiser => voice.Say("skin allergy", "alergia de la piel"),
        _ => hazard.ToString(),
    };
}
