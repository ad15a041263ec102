using CsCheck;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class RecipeTests
{
    private static readonly Gen<Recipe> AnyRecipe = Gen.Select(Gen.Double[0.05, 10], Gen.Double[0.7, 2]).Array[2, 4]
        .Select(parts => new Recipe([.. parts.Select((p, i) => new MixPart($"{(char)('A' + i)}", p.Item1, p.Item2))]));

    [Fact]
    public void Parts_add_up_to_the_mix_by_volume_and_by_mass() => Gen.Select(AnyRecipe, Gen.Double[10, 5000]).Sample((recipe, ml) =>
    {
        var parts = recipe.Of(ml);
        Assert.Equal(ml, parts.Sum(p => p.Ml), 1e-9 * ml);
        Assert.Equal(ml * recipe.DensityGPerMl, parts.Sum(p => p.G), 1e-9 * ml);
    });

    [Fact]
    public void A_partly_used_kit_makes_what_its_scarcest_part_allows() => Gen.Select(AnyRecipe, Gen.Double[1, 1000].Array[4]).Sample((recipe, left) =>
    {
        var rest = recipe.From([.. left.Take(recipe.Parts.Count)]);
        Assert.Equal(0, rest.Left.Single(l => l.Name == rest.RunsOut).Ml, 1e-9);
        Assert.All(rest.Use.Zip(left), u => Assert.True(u.First.Ml <= u.Second * (1 + 1e-12)));
        Assert.Equal(0, recipe.WorstRatioError([.. rest.Use.Select(u => u.Ml)]), 1e-9);
    });

    /// <summary>Worked by hand: 4 : 1 : 0.5 with 1000, 200 and 150 mL left; B runs out: 800 + 200 + 100.</summary>
    [Fact]
    public void Three_parts_by_hand()
    {
        var rest = new Recipe([new("A", 4, 1.2), new("B", 1, 1), new("C", 0.5, 0.8)]).From([1000, 200, 150]);
        Assert.Equal(("B", 1100.0), (rest.RunsOut, Math.Round(rest.MixMl, 9)));
        Assert.Equal([200, 0, 50], rest.Left.Select(l => Math.Round(l.Ml, 9)));
    }

    [Fact]
    public void A_part_by_mass_is_turned_through_its_density()
    {
        var recipe = new Recipe([MixPart.ByMass("A", 100, 1.42), MixPart.ByMass("B", 34, 1.01)]);
        var parts = recipe.Of(500);
        Assert.Equal(100 / 34.0, parts[0].G / parts[1].G, 1e-12);
    }

    [Fact]
    public void The_worst_ratio_error_is_that_of_the_part_furthest_off() =>
        Assert.Equal(0.25, new Recipe([new("A", 2, 1), new("B", 1, 1), new("C", 1, 1)]).WorstRatioError([100, 50, 40]), 1e-12);
}
