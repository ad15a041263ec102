using Lapwise.Core.Quick;

namespace Lapwise.Cli.Tests.Commands;

public sealed class QuickCommandTests
{
    private static readonly string[] Wipe = ["quick", "vapour", "of=acetone", "amount=2floz", "over=10min", "length=12ft", "width=15ft", "height=8ft", "changes=4"];
    private static readonly string[] Batch = ["quick", "pot-life", "time=40min", "at=77F", "of=100g", "time2=24min", "at2=77F", "of2=1kg", "mass=3lb", "material=77F", "ends=overheats"];

    [Theory]
    [InlineData("film", "wet=6mil", "solids=62%")]
    [InlineData("spread", "area=48ft2", "wet=6mil", "solids=62%", "loss=10%", "used=28floz")]
    [InlineData("mix", "by=mass", "a=100", "b=34", "densityA=1.42 g/mL", "densityB=1.01 g/mL", "total=24floz")]
    [InlineData("dew-point", "air=68F", "humidity=60%", "surface=66F")]
    [InlineData("open-time", "time=11min", "at=73F", "time2=7min", "at2=90F", "surface=80F", "evaporation=60%", "humidity=35%")]
    [InlineData("cure", "time=4h", "at=73F", "room=65F", "swing=18F")]
    [InlineData("voc", "a=2", "b=1", "vocA=80g/L", "vocB=120g/L", "waterA=27.5%", "thinner=2%")]
    [InlineData("day", "mean=68F", "humidity=70%", "swing=25F")]
    [InlineData("width", "shape=fullRound", "thickness=1 1/2 in", "run=12ft")]
    public void Each_sum_answers_in_both_languages_and_unit_systems(string sum, params string[] values)
    {
        Shell.Run(["quick", sum, .. values, "--explain"]).Matches($"quick-{sum}.en.us");
        Shell.Run(["quick", sum, .. values, "--explain", "--lang", "es", "--units", "metric"]).Matches($"quick-{sum}.es.metric");
        Assert.Equal(sum, (string)Shell.Run(["quick", sum, .. values, "--json"]).Json["sum"]!);
    }

    [Fact]
    public void A_wipe_and_a_hot_batch_carry_their_cautions()
    {
        Shell.Run([.. Wipe, "--explain"]).Matches("quick-vapour.en.us");
        Shell.Run([.. Wipe, "--lang", "es", "--units", "metric"]).Matches("quick-vapour.es.metric");
        Shell.Run([.. Batch, "--explain"]).Matches("quick-pot-life.en.us");
        Shell.Run([.. Batch, "--lang", "es", "--units", "metric"]).Matches("quick-pot-life.es.metric");
        Assert.NotEmpty(Shell.Run([.. Batch, "--json"]).Json["cautions"]!.AsArray());
        Assert.True(Shell.Run([.. Batch, "--json"]).Json["curve"]!["lines"]![0]!["points"]!.AsArray().Count > 10);
    }

    [Fact]
    public void A_sum_with_a_picture_writes_it_and_one_without_says_so()
    {
        var path = Path.Combine(Path.GetTempPath(), $"lapwise-{Guid.NewGuid():N}.svg");
        Assert.Equal(Outcome.Done, Shell.Run([.. Batch, "--out", path]).Outcome);
        Assert.Contains("pour it out by", File.ReadAllText(path));
        File.Delete(path);
        Assert.Equal(Outcome.BadInput, Shell.Run("quick", "film", "wet=6mil", "solids=62%", "--out", path).Outcome);
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void A_number_does_not_change_with_language_or_units()
    {
        string[] asked = ["quick", "film", "wet=150um", "solids=62%", "--json"];
        Assert.Equal((double)Shell.Run(asked).Json["numbers"]![1]!["value"]!, (double)Shell.Run([.. asked, "--lang", "es", "--units", "metric"]).Json["numbers"]![1]!["value"]!);
    }

    [Fact]
    public void Each_sum_says_what_it_asks_for() => Assert.All(QuickSum.All, sum =>
    {
        var shell = Shell.Run("quick", sum.Name);
        Assert.Equal(Outcome.Done, shell.Outcome);
        Assert.All(sum.Fields, f => Assert.Contains(f.Name, shell.Out));
        Assert.All(shell.Out.Split('\n'), line => Assert.True(line.Length <= Terminal.Columns, line));
        Assert.NotEqual(shell.Out, Shell.Run("quick", sum.Name, "--lang", "es").Out);
    });

    [Theory]
    [InlineData("flim: There is no such sum.", "flim", "wet=6mil")]
    [InlineData("wte: The name “wte” is not known here.", "film", "wte=6mil", "wet=6mil", "solids=62%")]
    [InlineData("6mil: This is not written as name=value.", "film", "6mil", "solids=62%")]
    [InlineData("wet: This name is given twice.", "film", "wet=6mil", "wet=7mil", "solids=62%")]
    [InlineData("wet: One of the two is needed: wet film of one coat, or dry film of one coat.", "film", "wet=6mil", "dry=3mil", "solids=62%")]
    [InlineData("solids: “120%” is more than 100 %.", "film", "wet=6mil", "solids=120%")]
    [InlineData("dewPoint: A dew point of 80 °F is above the air", "dew-point", "air=70F", "dewPoint=80F")]
    [InlineData("lel: The lower flammable limit, 15 %, is not below", "vapour", "of=acetone", "amount=2floz", "over=10min", "length=12ft", "width=15ft", "height=8ft", "lel=15%")]
    [InlineData("of: “aceton” is not a choice here.", "vapour", "of=aceton", "amount=2floz", "over=10min", "length=12ft", "width=15ft", "height=8ft")]
    [InlineData("mass: The effect of the mass needs both", "pot-life", "time=40min", "at=77F", "of=100g", "material=77F")]
    [InlineData("radius: 1\" does not fit a top", "width", "shape=ogee", "thickness=1 1/2 in", "radius=1in")]
    [InlineData("waterA: Water and exempt solvent come to", "voc", "vocA=80g/L", "waterA=70%", "exemptA=40%")]
    [InlineData("a: Nothing is entered; a number is needed. Write it in digits", "mix", "by=volume", "b=1", "total=24floz")]
    [InlineData("time2: A second point needs both", "cure", "time=4h", "at=73F", "time2=2h", "room=65F")]
    public void What_cannot_be_worked_is_said_in_one_line(string start, params string[] words)
    {
        var shell = Shell.Run(["quick", .. words]);
        Assert.Equal(Outcome.BadInput, shell.Outcome);
        Assert.StartsWith(start, Assert.Single(shell.Faults));
    }

    [Fact]
    public void A_broken_limit_ends_with_one() => Assert.Equal(Outcome.DoesNotWork, Shell.Run("quick", "dew-point", "air=68F", "humidity=80%", "surface=64F").Outcome);
}
