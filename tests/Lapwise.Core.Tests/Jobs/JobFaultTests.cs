using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

/// <summary>Every way a job can be entered wrongly: one change to a good job, and the fault it must give.</summary>
public sealed class JobFaultTests
{
    public static TheoryData<Slip<JobDocument>> Slips => new((Slip<JobDocument>[])
    [
        // the document
        new("a newer version", "lapwise", "MadeByNewerVersion", j => j with { Lapwise = 2 }),
        new("a version that never was", "lapwise", "VersionUnknown", j => j with { Lapwise = 0 }),
        new("no name", "name", "NameMissing", j => j with { Name = "  " }),
        new("no tops", "tops", "NoTops", j => j with { Tops = [] }),
        new("no coats", "system", "NoCoats", j => j with { System = [] }),
        new("an empty place among the tops", "tops[1]", "EmptyPlace", j => j with { Tops = [Written.Island, null!] }),
        new("more tops than a job has", "tops", "TooMany", j => j with { Tops = [.. Enumerable.Range(0, 201).Select(i => Written.Island with { Name = $"Top {i}" })] }),
        // crew
        new("a crew of a hundred", "crew", "TooMany", j => j with { Crew = [.. Enumerable.Range(0, 100).Select(i => new PersonDocument { Name = $"{i}" })] }),
        new("nobody", "crew", "NobodyInCrew", j => j with { Crew = [] }),
        new("a person without a name", "crew[0].name", "NameMissing", j => j with { Crew = [new PersonDocument()] }),
        new("two people of one name", "crew[1].name", "NameTwice", j => j with { Crew = [new() { Name = "Ines" }, new() { Name = "ines" }] }),
        new("a pace without its time", "crew[0].pace.wetOut", "UnitMissing", j => j with { Crew = [new() { Name = "Ines", Pace = new() { WetOut = "6 ft²" } }] }),
        new("a pace of nothing", "crew[0].pace.edge", "NotPositive", j => j with { Crew = [new() { Name = "Ines", Pace = new() { Edge = "0 ft/min" } }] }),
        new("a pace no arm has", "crew[0].pace.dryPass", "TooLarge", j => j with { Crew = [new() { Name = "Ines", Pace = new() { DryPass = "9000 ft²/min" } }] }),
        // room
        new("no air temperature", "room.air", "QuantityMissing", j => j with { Room = j.Room with { Air = "" } }),
        new("humidity over 100 %", "room.humidity", "TooLarge", j => j with { Room = j.Room with { Humidity = "104 %" } }),
        new("no humidity at all has no dew point", "room.humidity", "NotPositive", j => j with { Room = j.Room with { Humidity = "0 %" } }),
        new("humidity as a fraction", "room.humidity", "TooSmall", j => j with { Room = j.Room with { Humidity = "0.48" } }),
        new("an oven for a room", "room.surface", "TooLarge", j => j with { Room = j.Room with { Surface = "400 °F" } }),
        new("a length for a temperature", "room.material", "UnitOfAnotherKind", j => j with { Room = j.Room with { Material = "70 in" } }),
        // sizes
        new("a negative side", "tops[0].outline.length", "NotPositive", j => Top(j, t => t with { Outline = t.Outline with { Length = "-96 in" } })),
        new("a side of nothing", "tops[0].outline.depth", "NotPositive", j => Top(j, t => t with { Outline = t.Outline with { Depth = "0" } })),
        new("an absurd side", "tops[0].outline.length", "TooLarge", j => Top(j, t => t with { Outline = t.Outline with { Length = "2450 m" } })),
        new("an unreadable side", "tops[0].outline.length", "NumberMissing", j => Top(j, t => t with { Outline = t.Outline with { Length = "about eight feet" } })),
        new("a side that is not a number", "tops[0].outline.length", "NumberMissing", j => Top(j, t => t with { Outline = t.Outline with { Length = "NaN" } })),
        new("a side that can be read two ways", "tops[0].outline.length", "NumberAmbiguous", j => Top(j, t => t with { Outline = t.Outline with { Length = "2,450 mm" } })),
        new("no depth", "tops[0].outline.depth", "QuantityMissing", j => Top(j, t => t with { Outline = t.Outline with { Depth = null } })),
        new("an absurd thickness", "tops[0].thickness", "TooLarge", j => Top(j, t => t with { Thickness = "2 m" })),
        new("a tape without steps", "tops[0].outline.tapeStep", "NotPositive", j => Top(j, t => t with { Outline = t.Outline with { TapeStep = "0 mm" } })),
        // outlines
        new("a top without a name", "tops[0].name", "NameMissing", j => Top(j, t => t with { Name = "" })),
        new("two tops of one name", "tops[1].name", "NameTwice", j => j with { Tops = [Written.Island, Written.Island] }),
        new("a leg that does not leave the run", "tops[0].outline.rightLegLength", "LegTooShort", j => Shape(j, new() { Shape = OutlineShape.L, Length = "10 ft", Depth = "25 in", RightLegLength = "25 in", RightLegDepth = "25 in" })),
        new("a leg as wide as the back", "tops[0].outline.rightLegDepth", "LegsTooWide", j => Shape(j, new() { Shape = OutlineShape.L, Length = "10 ft", Depth = "25 in", RightLegLength = "5 ft", RightLegDepth = "10 ft" })),
        new("legs of a U that meet", "tops[0].outline.leftLegDepth", "LegsTooWide", j => Shape(j, new() { Shape = OutlineShape.U, Length = "10 ft", Depth = "25 in", RightLegLength = "5 ft", RightLegDepth = "5 ft", LeftLegLength = "5 ft", LeftLegDepth = "5 ft" })),
        new("a corner rounder than the top", "tops[0].outline.radius", "RadiusTooLarge", j => Shape(j, new() { Shape = OutlineShape.RoundedRectangle, Length = "40 in", Depth = "20 in", Radius = "11 in" })),
        new("a circle without a diameter", "tops[0].outline.diameter", "QuantityMissing", j => Shape(j, new() { Shape = OutlineShape.Circle })),
        new("a walk of two straight sides", "tops[0].outline.sides", "TooFewSides", j => Walk(j, new() { Length = "4 ft" }, new() { Length = "4 ft" })),
        new("a walk of more sides than letters", "tops[0].outline.sides", "TooManySides", j => Walk(j, [.. Enumerable.Range(0, 27).Select(_ => new WalkedSideDocument { Length = "4 in", Turn = "right 10" })])),
        new("a side of a walk without length", "tops[0].outline.sides[1].length", "QuantityMissing", j => Walk(j, new() { Length = "4 ft" }, new(), new() { Length = "4 ft" })),
        new("a turn that is none", "tops[0].outline.sides[0].turn", "TurnUnclear", j => Walk(j, new() { Length = "4 ft", Turn = "back" }, new() { Length = "4 ft" }, new() { Length = "4 ft" })),
        new("a turn right back", "tops[0].outline.sides[0].turn", "TooLarge", j => Walk(j, new() { Length = "4 ft", Turn = "right 180" }, new() { Length = "4 ft" }, new() { Length = "4 ft" })),
        new("an arc once round", "tops[0].outline.sides[0].length", "ArcOverFullTurn", j => Walk(j, new() { Length = "7 ft", Radius = "1 ft" }, new() { Length = "4 ft" }, new() { Length = "4 ft" })),
        new("a diagonal from no corner", "tops[0].outline.diagonals[0].from", "NoSuchSide", j => Top(j, t => t with { Outline = t.Outline with { Diagonals = [new() { From = "K", To = "C", Length = "7 ft" }] } })),
        new("a diagonal to where it starts", "tops[0].outline.diagonals[0].to", "DiagonalGoesNowhere", j => Top(j, t => t with { Outline = t.Outline with { Diagonals = [new() { From = "A", To = "A", Length = "7 ft" }] } })),
        new("a diagonal without length", "tops[0].outline.diagonals[0].length", "QuantityMissing", j => Top(j, t => t with { Outline = t.Outline with { Diagonals = [new() { From = "A", To = "C" }] } })),
        // edges
        new("a side not said", "tops[0].edges.C", "EdgeNotSaid", j => Edges(j, e => e.Remove("C"))),
        new("a letter without a side", "tops[0].edges.E", "NoSuchSide", j => Edges(j, e => e["E"] = new EdgeDocument())),
        new("a small letter", "tops[0].edges.a", "NoSuchSide", j => Edges(j, e => e["a"] = new EdgeDocument())),
        new("a splash without height", "tops[0].edges.B.height", "QuantityMissing", j => Edges(j, e => e["B"] = new() { Kind = EdgeKind.Splash })),
        new("a splash with three ends", "tops[0].edges.B.coatedEnds", "CoatedEndsNotPossible", j => Edges(j, e => e["B"] = new() { Kind = EdgeKind.Splash, Height = "4 in", CoatedEnds = 3 })),
        new("a waterfall without a drop", "tops[0].edges.B.drop", "QuantityMissing", j => Edges(j, e => e["B"] = new() { Kind = EdgeKind.Waterfall })),
        new("an eased edge without radius", "tops[0].edges.A.profile.radius", "QuantityMissing", j => Edges(j, e => e["A"] = new() { Kind = EdgeKind.Open, Profile = new() { Shape = ProfileShape.Eased } })),
        new("two roundings over the thickness", "tops[0].edges.A.profile.radius", "RadiusOverThickness", j => Edges(j, e => e["A"] = new() { Kind = EdgeKind.Open, Profile = new() { Shape = ProfileShape.Eased, Radius = "1 in" } })),
        new("a measured edge without its width", "tops[0].edges.A.profile.width", "QuantityMissing", j => Edges(j, e => e["A"] = new() { Kind = EdgeKind.Open, Profile = new() { Shape = ProfileShape.Measured } })),
        // cutouts and joints
        new("a cutout without a name", "tops[0].cutouts[0].name", "NameMissing", j => Cut(j, c => c with { Name = "" })),
        new("a cutout without a diameter", "tops[0].cutouts[0].diameter", "QuantityMissing", j => Cut(j, c => c with { Diameter = null })),
        new("a negative cutout", "tops[0].cutouts[0].diameter", "NotPositive", j => Cut(j, c => c with { Diameter = "-1 in" })),
        new("a cutout before the top starts", "tops[0].cutouts[0].along", "TooSmall", j => Cut(j, c => c with { Along = "-3 in" })),
        new("a cutout placed nowhere", "tops[0].cutouts[0].in", "QuantityMissing", j => Cut(j, c => c with { In = "" })),
        new("a sink rounder than itself", "tops[0].cutouts[0].radius", "RadiusTooLarge", j => Cut(j, c => new() { Name = "Sink", Shape = CutoutShape.RoundedRectangle, Length = "20 in", Depth = "16 in", Radius = "9 in", Along = "30 in", In = "12 in" })),
        new("a joint on no side", "tops[0].breaks[0].side", "NoSuchSide", j => Top(j, t => t with { Breaks = [new() { Side = "Q", At = "3 ft" }] })),
        new("a dry pass that is no direction", "tops[0].dryPass", "TooLarge", j => Top(j, t => t with { DryPass = "270" })),
        // coats
        new("an unknown product", "system[0].product", "ProductUnknown", j => Coat(j, c => c with { Product = "claer" })),
        new("no product", "system[0].product", "ProductUnknown", j => Coat(j, c => c with { Product = "" })),
        new("a coat on a top that is not there", "system[0].onTops", "TopUnknown", j => Coat(j, c => c with { OnTops = ["Iland"] })),
        new("a coat on a top without a name", "system[0].onTops", "TopUnknown", j => Coat(j, c => c with { OnTops = [null!] })),
        new("thinner over the limit", "system[0].thinner", "ThinnerOverLimit", j => Coat(j, c => c with { Thinner = "2.1 %" })),
        new("negative thinner", "system[0].thinner", "TooSmall", j => Coat(j, c => c with { Thinner = "-1 %" })),
        new("thinner where none is permitted", "system[0].thinner", "ThinnerNotPermitted", j => j with { Products = [Written.Clear with { Thinner = null }] }),
        new("a film too thin", "system[0].wetFilm", "FilmOutsideRange", j => Coat(j, c => c with { WetFilm = "5 mil" })),
        new("a film too thick", "system[0].wetFilm", "FilmOutsideRange", j => Coat(j, c => c with { WetFilm = "200 µm" })),
        new("a test board whose laps cross", "system[0].testBoardFirstBad", "BoardOutOfOrder", j => Coat(j, c => c with { TestBoardOpenTime = "10 min", TestBoardFirstBad = "9 min" })),
        new("a test board with only the bad lap", "system[0].testBoardFirstBad", "BoardOutOfOrder", j => Coat(j, c => c with { TestBoardFirstBad = "9 min" })),
        new("a test board of no time", "system[0].testBoardOpenTime", "NotPositive", j => Coat(j, c => c with { TestBoardOpenTime = "0 min" })),
        new("two products of one id", "products[1].id", "ProductTwice", j => j with { Products = [Written.Clear, Written.Clear] }),
        new("a mix ratio of 0 in a product of the file", "products[0].mix.b", "MixRatioNotPossible", j => j with { Products = [Written.Clear with { Mix = new() { A = 2, B = 0 } }] }),
        // tools and aims
        new("a negative roller charge", "tools.rollerCharge", "TooSmall", j => j with { Tools = new() { RollerCharge = "-1 fl oz" } }),
        new("all lost at the edges", "tools.edgeLoss", "TooLarge", j => j with { Tools = new() { EdgeLoss = "100 %" } }),
        new("a batch of nothing", "tools.largestBatch", "NotPositive", j => j with { Tools = new() { LargestBatch = "0 mL" } }),
        new("a margin of all the open time", "aims.marginShare", "TooLarge", j => j with { Aims = new() { MarginShare = "100 %" } }),
        new("an endless reach", "aims.reach", "TooLarge", j => j with { Aims = new() { Reach = "12 ft" } }),
    ]);

    [Theory]
    [MemberData(nameof(Slips))]
    public void Each_slip_gives_its_fault_at_its_place_in_both_languages(Slip<JobDocument> slip)
    {
        ArgumentNullException.ThrowIfNull(slip);
        var read = JobReading.Read(slip.Make(Written.Job), [Written.Clear]);

        var fault = Assert.Single(read.Faults, f => f.Path == slip.Path);
        Assert.Equal(slip.Code, fault.Code);
        Said.InEveryVoice([fault.Text, fault.Cure]);
    }

    [Fact]
    public void A_top_with_a_fault_is_left_out_and_the_others_stay()
    {
        var broken = Written.Island with { Name = "Broken", Outline = new() { Length = "no", Depth = "25 in" } };
        var read = JobReading.Read(Written.Job with { Tops = [broken, Written.Island] }, [Written.Clear]);

        Assert.Equal("tops[0].outline.length", Assert.Single(read.Faults).Path);
        Assert.Equal("tops[1]", Assert.Single(read.Job!.Tops).Path);
        Assert.Single(read.Job.System);
    }

    [Fact]
    public void Every_fault_of_a_top_is_said_at_once()
    {
        var broken = Written.Island with { Name = "", Thickness = "x", Outline = new() { Length = "no" }, DryPass = "999" };
        var read = JobReading.Read(Written.Job with { Tops = [broken] }, [Written.Clear]);
        Assert.Equal(
            ["tops[0].name", "tops[0].thickness", "tops[0].outline.length", "tops[0].outline.depth", "tops[0].dryPass"],
            read.Faults.Select(f => f.Path));
    }

    [Fact]
    public void A_coat_never_rests_on_a_room_that_was_not_read()
    {
        var read = JobReading.Read(Written.Job with { Room = Written.Job.Room with { Surface = "warm" } }, [Written.Clear]);

        Assert.Empty(read.Job!.System);
        Assert.Single(read.Job.Tops);
        Assert.True(double.IsNaN(read.Job.Room.Surface.Celsius));
    }

    [Fact]
    public void An_unknown_product_is_met_with_the_one_that_was_probably_meant()
    {
        var read = JobReading.Read(Written.Job with { System = [new() { Product = "cleer" }] }, [Written.Clear]);
        Assert.Contains("Did you mean clear?", Assert.Single(read.Faults).Text(Voice.Default), StringComparison.Ordinal);
    }

    [Fact]
    public void The_limit_and_the_value_stand_in_the_fault()
    {
        var read = JobReading.Read(Coat(Written.Job, c => c with { Thinner = "3 %" }), [Written.Clear]);
        Assert.Equal("3 % of clean water is over the limit of Fast clear (invented), 2 %.", Assert.Single(read.Faults).Text(Voice.Default));
    }

    [Fact]
    public void Thinner_at_its_limit_and_film_at_its_limits_pass()
    {
        string[] films = ["6 mil", "7.5 mil", "152.4 µm", "190,5 µm"];
        Assert.All(films, film => Assert.Empty(JobReading.Read(Coat(Written.Job, c => c with { Thinner = "2 %", WetFilm = film }), [Written.Clear]).Faults));
    }

    [Fact]
    public void A_product_inside_the_file_comes_before_the_library()
    {
        var read = JobReading.Read(Written.Job with { Products = [Written.Clear with { Name = "From the file" }] }, [Written.Clear]);
        Assert.Equal("From the file", Assert.Single(read.Job!.System).Product.Name);
    }

    [Fact]
    public void Nulls_where_lists_and_parts_belong_are_faults_and_no_crash()
    {
        var read = JobReading.Read(
            new JobDocument { Name = null!, Room = null!, Crew = null!, Tops = [new TopDocument { Name = null!, Outline = null!, Edges = null! }], System = [new CoatDocument { Product = null! }] },
            [new ProductDocument { Id = null!, Mix = null!, WetFilm = null!, Limits = null!, PotLife = null!, Kits = null! }]);
        Assert.NotEmpty(read.Faults);
        Said.InEveryVoice([.. read.Faults.SelectMany(f => new[] { f.Text, f.Cure })]);
    }

    private static JobDocument Top(JobDocument job, Func<TopDocument, TopDocument> change) => job with { Tops = [change(Written.Island)] };

    private static JobDocument Shape(JobDocument job, OutlineDocument outline) =>
        Top(job, t => t with { Outline = outline, Cutouts = null, Edges = SideLetters.Of(outline).ToDictionary(l => l.ToString(), _ => new EdgeDocument()) });

    private static JobDocument Walk(JobDocument job, params WalkedSideDocument[] sides) => Shape(job, new OutlineDocument { Shape = OutlineShape.Walk, Sides = sides });

    private static JobDocument Edges(JobDocument job, Action<Dictionary<string, EdgeDocument>> change)
    {
        var edges = new Dictionary<string, EdgeDocument>(Written.Island.Edges);
        change(edges);
        return Top(job, t => t with { Edges = edges });
    }

    private static JobDocument Cut(JobDocument job, Func<CutoutDocument, CutoutDocument> change) => Top(job, t => t with { Cutouts = [change(t.Cutouts![0])] });

    private static JobDocument Coat(JobDocument job, Func<CoatDocument, CoatDocument> change) => job with { System = [change(job.System[0])] };
}
