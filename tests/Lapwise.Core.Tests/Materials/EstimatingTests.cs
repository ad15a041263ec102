using CsCheck;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;
using Lapwise.Core.Quantities;
using static Lapwise.Core.Tests.CaseFile;

namespace Lapwise.Core.Tests.Materials;

public sealed class EstimatingTests
{
    private static CoatMaterial Estimate(Coat coat, MeasuredJob measured, Tools? tools = null, int people = 1) =>
        Estimating.Estimate(
            Invented.Job with { System = [coat], Tools = tools ?? Invented.Tools, Crew = [.. Enumerable.Repeat(Invented.Person, people)] },
            measured).Coats[0];

    private static Coat With(Func<Product, Product> change) => Invented.Coat with { Product = change(Invented.Clear) };

    /// <summary>
    /// Worked by hand: 4 m² flat and 5 m × 0.04 m of edge at 165 µm are 693 mL; two people keep 2 × 60 and 2 × 45 mL, the
    /// edge 10 % of 33 mL; 693 + 120 + 90 + 3.3 = 906.3 mL fit one batch of 1400, whose cup keeps 15.
    /// </summary>
    [Fact]
    public void A_rolled_coat_loses_to_rollers_trays_edges_and_cups()
    {
        var coat = Estimate(Invented.Coat, Invented.Measured(4, edgeM: 5), people: 2);

        Assert.Equal(693, coat.NetMl, 1e-9);
        Assert.Equal(
            [(LossKind.RollerCharge, 120), (LossKind.TrayResidue, 90), (LossKind.EdgePass, 3.3), (LossKind.CupResidue, 15)],
            coat.Losses.Select(l => (l.Kind, Math.Round(l.Ml, 9))));
        Assert.Equal(1, coat.Batches);
        Assert.Equal(921.3, coat.NeedMl, 1e-9);
    }

    /// <summary>By hand: 2 m² at 1500 µm are 3000 mL, 6 m of edge run off 6 · 0.025 m² · 1.5 mm = 225 mL; three cups of 1400.</summary>
    [Fact]
    public void A_poured_coat_loses_to_its_edges_and_no_roller()
    {
        var poured = With(p => p with { Method = ApplicationMethod.Poured, MostWetFilm = new WetFilm(3000), SagLimit = null }) with { WetFilm = new WetFilm(1500) };
        var coat = Estimate(poured, Invented.Measured(2, edgeM: 6, edgeWidthM: 0));

        Assert.Equal(3000, coat.NetMl, 1e-9);
        Assert.Equal([(LossKind.RunOff, 225), (LossKind.CupResidue, 45)], coat.Losses.Select(l => (l.Kind, Math.Round(l.Ml, 9))));
        Assert.Equal(3, coat.Batches);
    }

    [Fact]
    public void Nothing_to_coat_takes_nothing()
    {
        var coat = Estimate(Invented.Coat, Invented.Measured(0));
        Assert.Equal((0, 0, 0), (coat.NeedMl, coat.LossMl, coat.Batches));
    }

    /// <summary>A batch leaves its residue in the cup, so 2 × 100 mL bring 180 mL to the top and 181 need a third.</summary>
    [Theory]
    [InlineData(90, 1)]
    [InlineData(90.001, 2)]
    [InlineData(180, 2)]
    [InlineData(181, 3)]
    public void BatchesFor_counts_what_stays_in_each_cup(double ml, int batches) =>
        Assert.Equal(batches, Consumption.Of(Invented.Coat, Invented.Tools with { LargestBatchMl = 100, CupResidueMl = 10 }).BatchesFor(ml));

    [Fact]
    public void The_smaller_of_container_and_product_limits_the_batch()
    {
        var coat = With(p => p with { LargestBatchMl = 900 });
        Assert.Equal(900, Consumption.Of(coat, Invented.Tools).LargestBatchMl);
        Assert.Equal(500, Consumption.Of(coat, Invented.Tools with { LargestBatchMl = 500 }).LargestBatchMl);
    }

    [Fact]
    public void A_cup_that_keeps_the_whole_batch_is_refused()
    {
        var coat = Estimate(Invented.Coat, Invented.Measured(4), Invented.Tools with { LargestBatchMl = 10 });
        Assert.Equal(("BatchStaysInCup", Limit.Never), (coat.Reasons[0].Code, coat.Reasons[0].Limit));
    }

    /// <summary>Sag limit of the data sheet; ASTM D4400 names the test (from memory).</summary>
    [Fact]
    public void A_film_over_the_sag_limit_is_refused_on_verticals_and_noted_on_edges()
    {
        var thick = With(p => p with { SagLimit = new WetFilm(160) });

        var sags = Assert.Single(Estimate(thick, Invented.Measured(4, 5, 0.04, FaceKind.Waterfall)).Reasons);
        Assert.Equal(("FilmSags", Limit.AtYourWord), (sags.Code, sags.Limit));
        Assert.Equal(("EdgeMayDrip", Limit.Note), Estimate(thick, Invented.Measured(4, 5)).Reasons.Select(r => (r.Code, r.Limit)).Single());
        Assert.Empty(Estimate(thick, Invented.Measured(4)).Reasons);
        Assert.Empty(Estimate(Invented.Coat, Invented.Measured(4, 5, 0.04, FaceKind.Splash)).Reasons);
    }

    /// <summary>500 µm where 200 hold: three coats of 167 µm are inside the sheet's least film, so they are the remedy.</summary>
    [Fact]
    public void The_remedy_for_sagging_names_coats_that_do_hold()
    {
        var coat = With(p => p with { SagLimit = new WetFilm(200), MostWetFilm = new WetFilm(600) }) with { WetFilm = new WetFilm(500) };
        var remedy = Estimate(coat, Invented.Measured(4, 0, 0, FaceKind.Splash)).Reasons[0].Remedy(new Voice(Language.English, UnitSystem.Metric));
        Assert.Equal("Put it on the verticals in 3 thinner coats of about 167 µm.", remedy);
    }

    [Fact]
    public void Thinner_beyond_the_products_limit_is_never_taken_up() => Assert.All(Rows("refused/thinner.txt"), row =>
    {
        var thinner = row[1] is "none" ? null : Invented.Clear.Thinner! with { LimitFraction = Number(row[1]) };
        var coat = With(p => p with { Thinner = thinner }) with { ThinnerFraction = Number(row[0]) };

        var reason = Estimate(coat, Invented.Measured(4)).Reasons[0];

        Assert.Equal((row[2], Limit.Never), (reason.Code, reason.Limit));
    });

    [Theory]
    [InlineData(140, "FilmTooThin")]
    [InlineData(250, "FilmTooThick")]
    public void A_film_outside_the_sheet_works_only_at_the_finishers_word(double micrometres, string code)
    {
        var reason = Estimate(Invented.Coat with { WetFilm = new WetFilm(micrometres) }, Invented.Measured(4)).Reasons[0];
        Assert.Equal((code, Limit.AtYourWord), (reason.Code, reason.Limit));
    }

    private static readonly Gen<(Coat Coat, MeasuredJob Measured, Tools Tools, int People)> AnyCoat =
        from flat in Gen.Double[0, 30]
        from edge in Gen.Double[0, 40]
        from film in Gen.Double[50, 2000]
        from thinner in Gen.Double[0, 0.02]
        from poured in Gen.Bool
        from largest in Gen.Double[200, 4000]
        from people in Gen.Int[1, 3]
        select (
            With(p => p with { Method = poured ? ApplicationMethod.Poured : ApplicationMethod.Rolled }) with { WetFilm = new WetFilm(film), ThinnerFraction = thinner },
            Invented.Measured(flat, edge), Invented.Tools with { LargestBatchMl = largest }, people);

    [Fact]
    public void Need_is_net_and_losses_and_fits_the_fewest_batches() => AnyCoat.Sample((coat, measured, tools, people) =>
    {
        var material = Estimate(coat, measured, tools, people);
        var takes = Consumption.Of(coat, tools);

        Assert.Equal(material.NeedMl, material.NetMl + material.Losses.Sum(l => l.Ml), 1e-6);
        Assert.Equal(material.NeedMl * coat.ThinnerFraction, material.ThinnerMl, 1e-6);
        Assert.True(material.NeedMl <= (material.Batches * takes.LargestBatchMl) + 1e-5);
        var oneFewer = material.Batches - 1;
        if (oneFewer > 0) Assert.True(material.NeedMl - takes.CupMlPerBatch > (oneFewer * takes.LargestBatchMl) - 1e-5);
    });

    /// <summary>What Work adds up section by section is what the estimate counts at once.</summary>
    [Fact]
    public void Sections_sum_to_the_estimate() => Gen.Select(AnyCoat, Gen.Double[0, 1].Array[1, 8]).Sample((any, cuts) =>
    {
        var (coat, measured, tools, people) = any;
        var material = Estimate(coat, measured, tools, people);
        var takes = Consumption.Of(coat, tools);
        var whole = cuts.Sum() + 1e-3;
        var parts = cuts.Append(1e-3).Select(c => c / whole).ToList();

        Assert.Equal(material.NetMl, parts.Sum(p => takes.NetMl(p * material.AreaM2)), 1e-6);
        var strips = measured.Tops[0].Faces[0].Strips;
        if (strips is [var strip] && material.AreaM2 > 0)
        {
            Assert.Equal(
                material.Losses.Where(l => l.Kind is LossKind.EdgePass or LossKind.RunOff).Sum(l => l.Ml),
                parts.Sum(p => takes.EdgeLossMl(p * strip.AreaM2, p * strip.LengthM)), 1e-6);
        }
    });

    [Fact]
    public void Every_reason_and_input_is_said_in_both_languages_and_unit_systems()
    {
        var coat = With(p => p with { SagLimit = new WetFilm(160), Thinner = p.Thinner! with { LimitFraction = 0.01 } }) with { ThinnerFraction = 0.02, WetFilm = new WetFilm(250) };
        var material = Estimate(coat, Invented.Measured(4, 5, 0.04, FaceKind.Splash));

        Assert.Equal(["ThinnerOverLimit", "FilmTooThick", "FilmSags", "ThinnerUsed"], material.Reasons.Select(r => r.Code));
        Said.InEveryVoice([.. material.Reasons.SelectMany(r => new[] { r.Text, r.Remedy })]);
        Said.InEveryVoice([.. material.Basis.Inputs.Select(i => i.Name)]);
    }
}
