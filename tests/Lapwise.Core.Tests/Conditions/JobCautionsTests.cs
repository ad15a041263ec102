using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Conditions;

public sealed class JobCautionsTests
{
    private static readonly Top Top = Invented.Measured(1).Tops[0].Top;

    private static bool Says(Job job, string words) => JobCautions.Of(job).Any(c => c(Voice.Default).Contains(words, StringComparison.Ordinal));

    private static Job On(Substrate? substrate) => Invented.Job with { Tops = [Top with { Substrate = substrate }] };

    [Theory]
    [InlineData(Substrate.Stone, "silica", true)]
    [InlineData(Substrate.Tile, "silica", true)]
    [InlineData(Substrate.Laminate, "silica", false)]
    [InlineData(Substrate.OldCoating, "have it tested first", true)]
    [InlineData(Substrate.Tile, "asbestos", true)]
    [InlineData(Substrate.Wood, "asbestos", false)]
    [InlineData(null, "asbestos", true)]
    public void What_the_old_surface_can_hold_is_said(Substrate? substrate, string words, bool said) => Assert.Equal(said, Says(On(substrate), words));

    [Fact]
    public void A_solvent_wipe_has_its_own_caution()
    {
        Assert.False(Says(Invented.Job, "Solvent wipe:"));
        Assert.True(Says(Invented.Job with { System = [Invented.Coat with { Wipe = new Wipe(SolventName.Acetone, 60, 600) }] }, "Solvent wipe:"));
    }

    [Fact]
    public void Leftover_mix_and_rags_are_always_said() => Assert.True(Says(Invented.Job, "Leftover mix, rags"));

    [Fact]
    public void A_products_own_label_stands_before_the_usual_one()
    {
        var own = Invented.Job with { System = [Invented.Coat with { Product = Invented.Clear with { Label = ["H334", "H226"] } }] };
        Assert.True(Says(own, "Its label: DANGER. May cause allergy or asthma symptoms"));
        Assert.True(Says(Invented.Job, "Labels of this kind usually say: WARNING."));
    }

    [Fact]
    public void Every_caution_is_said_in_both_languages() =>
        Said.InEveryVoice([.. Enum.GetValues<Substrate>().Cast<Substrate?>().Append(null).SelectMany(s => JobCautions.Of(On(s) with { System = [Invented.Coat with { Wipe = new Wipe(SolventName.Mek, 60, 600), Product = Invented.Clear with { Label = ["H999"] } }] })).DistinctBy(c => c(Voice.Default))]);
}
