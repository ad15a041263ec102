using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>A job and a product without a fault, as a person would write them; tests change one thing at a time.</summary>
internal static class Written
{
    public static ProductDocument Clear => new()
    {
        Id = "clear",
        Name = "Fast clear (invented)",
        Mix = new MixDocument { By = MixBasis.Volume, A = 2, B = 1 },
        DensityA = "1.04 g/mL",
        DensityB = "1.11 g/mL",
        VolumeSolids = "62 %",
        Thinner = new ThinnerDocument { Name = "clean water", Limit = "2 %" },
        WetFilm = new WetFilmDocument { Least = "6 mil", Most = "7.5 mil" },
        PotLife = [new TimeAtDocument { Time = "45 min", At = "73 °F" }, new TimeAtDocument { Time = "26 min", At = "90 °F" }],
        OpenTime = [new TimeAtDocument { Time = "11 min", At = "73 °F" }],
        Recoat = new RecoatDocument { Earliest = "4 h", Latest = "24 h", At = "73 °F" },
        UsableFrom = new UsableFromDocument { LightUse = "48 h", FullUse = "7 d" },
        Limits = new LimitsDocument { AirLeast = "60 °F", AirMost = "85 °F", HumidityMost = "75 %" },
        Kits = [new KitDocument { Size = "24 fl oz", Price = 84m }],
        Hazards = [Hazard.Isocyanate],
    };

    public static TopDocument Island => new()
    {
        Name = "Island",
        Thickness = "1 1/2 in",
        Outline = new OutlineDocument { Shape = OutlineShape.Rectangle, Length = "6' 0\"", Depth = "36 in" },
        Edges = new Dictionary<string, EdgeDocument>
        {
            ["A"] = new() { Kind = EdgeKind.Open, Profile = new ProfileDocument { Shape = ProfileShape.Eased, Radius = "1/8 in" } },
            ["B"] = new() { Kind = EdgeKind.Splash, Height = "4 in", TopWidth = "3/4 in", CoatedEnds = 2 },
            ["C"] = new() { Kind = EdgeKind.Wall },
            ["D"] = new() { Kind = EdgeKind.Waterfall, Drop = "34 1/2 in", Return = "1 1/2 in" },
        },
        Cutouts = [new CutoutDocument { Name = "Tap", Shape = CutoutShape.Circle, Diameter = "1 3/8 in", Along = "36", In = "6" }],
    };

    public static JobDocument Job => new()
    {
        Name = "Kitchen, Larkhollow",
        Room = new RoomDocument { Air = "71 °F", Humidity = "48 %", Surface = "70 °F", Material = "70 °F" },
        Crew = [new PersonDocument { Name = "Ines" }],
        Tops = [Island],
        System = [new CoatDocument { Product = "clear", WetFilm = "6.5 mil", Thinner = "1 %" }],
    };
}

/// <summary>One thing wrong with a good document, and the fault it must give.</summary>
public sealed record Slip<TDocument>(string What, string Path, string Code, Func<TDocument, TDocument> Make)
{
    public override string ToString() => What;
}
