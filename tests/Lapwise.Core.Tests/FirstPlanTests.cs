using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Tests.Jobs;

namespace Lapwise.Core.Tests;

/// <summary>From an empty job to its first plan, one next thing at a time, said by the job alone.</summary>
public sealed class FirstPlanTests
{
    private static readonly Voice English = new(Language.English, UnitSystem.Us);
    private static readonly JobDocument Nothing = new() { Name = "New job", Crew = [new PersonDocument { Name = "Me" }] };
    private static readonly TopDocument Blank = new()
    {
        Name = "Top 1",
        Edges = new Dictionary<string, EdgeDocument> { ["A"] = new(), ["B"] = new(), ["C"] = new() { Kind = EdgeKind.Open, Profile = new ProfileDocument { Shape = ProfileShape.Square } }, ["D"] = new() },
    };

    private static readonly JobDocument Measured = Nothing with { Tops = [Blank with { Outline = new OutlineDocument { Length = "6 ft", Depth = "25 in" } }] };
    private static readonly JobDocument Coated = Measured with { System = [new CoatDocument { Product = "clear" }] };
    private static readonly JobDocument Whole = Coated with { Room = Written.Job.Room };

    [Fact]
    public void An_empty_job_begins_with_a_top_whatever_page_is_looked_at() =>
        Assert.All(Phases.All, at => Assert.Equal((Deed.AddTop, Phases.Measure), Step(Nothing, at)));

    [Theory]
    [InlineData(OutlineShape.Rectangle, null, null, "Pick the shape, then type “Length, side A”.", "tops[0].outline.length")]
    [InlineData(OutlineShape.Rectangle, "6 ft", null, "Now type “Depth, side B”.", "tops[0].outline.depth")]
    [InlineData(OutlineShape.L, null, null, "Pick the shape, then type “Whole back, side A”.", "tops[0].outline.length")]
    [InlineData(OutlineShape.L, "11 ft", "25 in", "Now type “Right leg, side B”.", "tops[0].outline.rightLegLength")]
    [InlineData(OutlineShape.Circle, null, null, "Pick the shape, then type “Diameter”.", "tops[0].outline.diameter")]
    [InlineData(OutlineShape.RoundedRectangle, "6 ft", "25 in", "Now type “Corner radius”.", "tops[0].outline.radius")]
    public void The_first_size_that_is_blank_is_asked_for_by_the_name_of_its_field(OutlineShape shape, string? length, string? depth, string said, string path)
    {
        var next = Next(Nothing with { Tops = [Blank with { Outline = new OutlineDocument { Shape = shape, Length = length is null ? null : new(length), Depth = depth is null ? null : new(depth) } }] }, Phases.Measure);
        Assert.Equal((Deed.TypeIn, said, path), (next.Deed, next.Text(English), next.Path));
    }

    [Fact]
    public void Sides_that_are_walked_are_asked_for_by_their_letters()
    {
        OutlineDocument walked = new() { Shape = OutlineShape.Walk, Sides = [new() { Length = "6 ft" }, new(), new(), new()] };
        var next = Next(Nothing with { Tops = [Blank with { Outline = walked }] }, Phases.Measure);
        Assert.Equal(("Now type “Side B”.", "tops[0].outline.sides[1].length"), (next.Text(English), next.Path));
    }

    [Fact]
    public void What_was_typed_and_cannot_be_used_is_put_right_before_anything_else()
    {
        var next = Next(Whole with { Tops = [Blank with { Outline = new OutlineDocument { Length = "sixty", Depth = "25 in" } }] }, Phases.Work);
        Assert.Equal((Deed.PutRight, Phases.Measure, "tops[0].outline.length"), (next.Deed, next.On, next.Path));
        Assert.Contains("sixty", next.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void A_top_nobody_can_stand_at_is_asked_about_by_name()
    {
        var closed = Measured with { Tops = [Measured.Tops[0] with { Edges = new Dictionary<string, EdgeDocument> { ["A"] = new(), ["B"] = new(), ["C"] = new(), ["D"] = new() } }] };
        var next = Next(closed, Phases.Measure);
        Assert.Equal((Deed.OpenASide, null), (next.Deed, next.Then));
        Assert.Contains("“Top 1”", next.Text(English), StringComparison.Ordinal);
    }

    [Fact]
    public void Measured_sides_are_read_back_once_and_hold_nobody_up()
    {
        var next = Next(Measured, Phases.Measure);
        Assert.Equal((Deed.LookAtSides, Phases.Materials), (next.Deed, next.Then));
        Assert.Contains("C: open; A, B, D: wall.", next.Text(English), StringComparison.Ordinal);
        Assert.Equal((Deed.ChooseCoating, Phases.Materials), Step(Measured, Phases.Materials));
        Assert.NotEqual(Deed.LookAtSides, Next(Coated, Phases.Measure).Deed);
    }

    [Fact]
    public void Where_no_coating_is_on_file_one_is_put_there() =>
        Assert.Equal(Deed.WriteCoating, FirstPlan.Next(SoFar(Measured) with { HasCoatings = false }, Phases.Materials).Deed);

    [Fact]
    public void After_a_coat_comes_the_room_reading_by_reading()
    {
        Assert.Equal((Deed.GoToRoom, Phases.Conditions), (Next(Coated, Phases.Materials).Deed, Next(Coated, Phases.Materials).Then));
        Assert.Equal("Read the room today: type “Air”.", Next(Coated, Phases.Conditions).Text(English));
        var warm = Coated with { Room = new RoomDocument { Air = "71 °F" } };
        Assert.Equal("Read the room today: type “Relative humidity”.", Next(warm, Phases.Conditions).Text(English));
    }

    [Fact]
    public void A_room_that_is_too_damp_is_said_before_the_plan() =>
        Assert.Equal(Deed.ChangeRoom, Next(Whole with { Room = Whole.Room with { Humidity = "97 %" } }, Phases.Conditions).Deed);

    [Fact]
    public void Without_anybody_to_roll_there_is_no_plan() =>
        Assert.Equal((Deed.PutRight, Phases.Work), Step(Whole with { Crew = [] }, Phases.Conditions));

    [Fact]
    public void The_plan_is_looked_at_waited_for_and_stands()
    {
        Assert.Equal((Deed.SeePlan, Phases.Work), (Next(Whole, Phases.Conditions).Deed, Next(Whole, Phases.Conditions).Then));
        Assert.Equal(Deed.Wait, FirstPlan.Next(SoFar(Whole) with { Plan = null }, Phases.Work).Deed);
        Assert.Equal(Deed.Stands, Next(Whole, Phases.Work).Deed);
        Assert.Equal(Deed.Stands, Next(Whole, Phases.Supply).Deed);
    }

    [Fact]
    public void A_plan_that_does_not_work_is_never_said_to_stand()
    {
        var slow = Whole with { Crew = [new PersonDocument { Name = "Me", Pace = new PaceDocument { Reload = "10 min" } }] };
        Assert.Equal((Deed.CurePlan, Phases.Work), Step(slow, Phases.Work));
    }

    private static (Deed, Phase) Step(JobDocument document, Phase at) => (Next(document, at).Deed, Next(document, at).On);

    private static NextThing Next(JobDocument document, Phase at) => FirstPlan.Next(SoFar(document), at);

    private static JobSoFar SoFar(JobDocument document)
    {
        var (whole, faults) = WholeJob.From(document, [Written.Clear]);
        return new JobSoFar(document, faults, true, whole?.Conditions, whole);
    }
}
