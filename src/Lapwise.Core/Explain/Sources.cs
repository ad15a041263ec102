namespace Lapwise.Core.Explain;

/// <summary>The one registry of what numbers rest on; <c>docs/sources.md</c> is written from it.</summary>
public static partial class Sources
{
    public static readonly Source Geometry = new("geometry", "Plane geometry", SourceStanding.Derived);
    public static readonly Source AsEntered = new("entered", "As entered, or from the product's data sheet as entered", SourceStanding.Entered);
    public static readonly Source Trade = new("trade", "Common practice, no source", SourceStanding.CommonPractice);
    public static readonly Source Handbook44 = new("nist-hb44", "NIST Handbook 44, Appendix C: the US gallon is 231 cubic inches", SourceStanding.Read);
    public static readonly Source AlduchovEskridge = new("alduchov-eskridge-1996", "Alduchov & Eskridge, J. Appl. Meteor. 35 (1996) 601-609: Magnus form of saturation vapour pressure over water", SourceStanding.ReadSecondHand);
    public static readonly Source Iso8502Part4 = new("iso-8502-4", "ISO 8502-4: probability of condensation before paint application; 3 °C above the dew point", SourceStanding.ReadSecondHand);
    public static readonly Source Ufgs09971 = new("ufgs-09971", "UFGS-09971 section 3.7.1.3: each 10 °C rise about halves pot life", SourceStanding.Read);
    public static readonly Source FilmSpread = new("film-spread", "Spreading-rate identity: 1 L covers 1 m² at 1000 µm; 1604 ft²·mil per US gallon", SourceStanding.ReadSecondHand);
    public static readonly Source Bowditch = new("bowditch", "Compass (Bowditch) rule of traverse adjustment", SourceStanding.FromMemory);

    public static IReadOnlyList<Source> All { get; } =
        [Geometry, AsEntered, Trade, Handbook44, AlduchovEskridge, Iso8502Part4, Ufgs09971, FilmSpread, Bowditch];
}
