using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Money;
using Lapwise.Core.Tests.Jobs;
using Lapwise.Core.Timeline;

namespace Lapwise.Core.Tests.Money;

/// <summary>A written kitchen through every phase and priced.</summary>
public sealed class WholePriceTests
{
    private static readonly JobDocument Kitchen = Written.Job with
    {
        Products = [Written.Clear, Written.Clear with { Id = "matt", Kits = [new KitDocument { Size = "24 fl oz", Price = 184m }] }],
        System = [new CoatDocument { Product = "clear", Color = "harbour blue" }, new CoatDocument { Product = "clear" }],
    };

    private static WholePrice Priced(JobDocument job, RatesDocument? rates = null)
    {
        var (whole, faults) = WholeJob.From(job, []);
        Assert.Empty(faults);
        var (priced, against) = WholePrice.Of(job, whole!, [], rates ?? new RatesDocument(), WholePrice.ChancesOf(whole!));
        Assert.Empty(against);
        return priced!;
    }

    [Fact]
    public void Defaults_are_said_to_be_defaults_until_each_is_entered()
    {
        Assert.Contains(Priced(Kitchen).Price.Reasons, r => r.Code == "RatesAssumed");
        var own = new RatesDocument
        {
            GivenBy = "Two Hills Coating", HourlyWage = "31", Burden = "22 %", Waste = "4 %", ConsumablesPerCoat = "18", ConsumablesPerJob = "35", TravelPerVisit = "20", Overhead = "12 %", Margin = "18 %", Tax = "7 %",
            Stages = [new StageDocument { Name = "order", Share = "50 %" }, new StageDocument { Name = "handover", Share = "50 %" }],
        };
        Assert.DoesNotContain(Priced(Kitchen, own).Price.Reasons, r => r.Code == "RatesAssumed");
    }

    [Fact]
    public void Every_day_on_site_is_a_drive_unless_the_agreement_counts_them()
    {
        int Drives(WholePrice priced) => (int)(priced.Price.Lines.Single(l => l.Kind == CostKind.Travel).Cost.Value / 25);
        var plain = Priced(Kitchen);
        var days = plain.Whole.Timeline.Steps.Where(s => s.By == Doer.Crew).SelectMany(s => s.Parts).Select(p => p.From.Date).Distinct().Count();
        Assert.Equal(days, Drives(plain));
        Assert.True(Drives(Priced(Kitchen with { Timeline = (Kitchen.Timeline ?? new()) with { WorkTo = "11:00" } })) > days);
        Assert.Equal(9, Drives(Priced(Kitchen with { Agreement = new AgreementDocument { Visits = 9 } })));
    }

    [Fact]
    public void The_price_with_a_change_is_the_price_once_it_is_signed()
    {
        ChangeDocument Change(string? signedOn) => new() { What = "backsplash", Price = "300", SignedOn = signedOn };
        JobDocument With(params ChangeDocument[] changes) => Kitchen with { Agreement = new AgreementDocument { Changes = changes } };
        var open = Priced(With(Change("2026-11-20"), Change(null), Change(null)));
        Assert.Equal(open.Price.Total, open.WithChanges(1)!.Total);
        Assert.Equal(Priced(With(Change("2026-11-20"), Change("2026-11-21"), Change(null))).Price.Total, open.WithChanges(2)!.Total);
        Assert.Equal(Priced(With(Change("2026-11-20"), Change("2026-11-21"), Change("2026-11-22"))).Price.Total, open.WithChanges(3)!.Total);
    }

    [Fact]
    public void A_quote_fits_until_tops_coats_or_the_total_are_others()
    {
        var priced = Priced(Kitchen);
        var quote = new IssuedQuote { Job = Kitchen, Price = QuoteIssuing.Sums(priced.Price, [], new Voice(Language.English, UnitSystem.Us)) };
        Assert.True(QuoteIssuing.StillFits(quote, Kitchen with { Name = "Renamed", Room = Kitchen.Room with { Air = "75 F" } }, priced.Price));
        Assert.False(QuoteIssuing.StillFits(quote, Kitchen with { System = [Kitchen.System[0] with { Color = "black" }, Kitchen.System[1]] }, priced.Price));
        Assert.False(QuoteIssuing.StillFits(quote, Kitchen, Priced(Kitchen with { Agreement = new AgreementDocument { Visits = 20 } }).Price));
    }

    [Fact]
    public void An_option_costs_what_a_job_made_that_way_costs_more()
    {
        var option = new OptionDocument { Name = "matt, full round", Edge = new ProfileDocument { Shape = ProfileShape.FullRound }, Coats = [new CoatOptionDocument { Coat = 2, Product = "matt" }] };
        var with = Priced(Kitchen with { Agreement = new AgreementDocument { Options = [option] } });
        var other = Assert.Single(with.Options);
        Assert.Equal(other.Price.Total - with.Price.Total, other.Difference);
        Assert.True(other.Difference.Value > 100, other.Difference.ToString()); // its kit costs 100 more, before waste, overhead and margin
        Assert.Equal(Priced(other.Option.Document).Price.Total, other.Price.Total);
    }

    [Fact]
    public void What_is_open_with_the_customer_is_said_until_it_is_settled()
    {
        var open = Priced(Kitchen).Terms.Open.Select(r => r.Code).ToList();
        Assert.Contains("SampleBoardNotSigned", open);
        Assert.Contains("DepositNotIn", open);
        var settled = Kitchen with { Agreement = new AgreementDocument { DepositInOn = "2026-11-25", SampleBoard = new SampleBoardDocument { SignedOn = "2026-11-24" } } };
        Assert.DoesNotContain(Priced(settled).Terms.Open, r => r.Limit != Limit.Note);
    }

    [Fact]
    public void A_signed_board_that_shows_another_colour_leaves_that_coat_open()
    {
        IReadOnlyList<Reason> Open(string shows) => [.. Priced(Kitchen with
        {
            System = [Kitchen.System[0], Kitchen.System[0] with { Color = "white" }, Kitchen.System[1]],
            Agreement = new AgreementDocument { DepositInOn = "2026-11-25", SampleBoard = new SampleBoardDocument { SignedOn = "2026-11-24", Shows = shows } },
        }).Terms.Open.Where(r => r.Limit != Limit.Note)];
        Assert.Empty(Open("Harbour Blue under white"));
        var other = Assert.Single(Open("harbour blue, satin"));
        Assert.Equal("BoardShowsOther", other.Code);
        Assert.All(Invented.Voices, v => Assert.All(["harbour blue, satin", "white", "2"], word => Assert.Contains(word, other.Text(v), StringComparison.Ordinal)));
    }

    [Fact]
    public void Children_and_animals_are_told_of_where_they_live_there()
    {
        int Words(HouseholdDocument? household) => Priced(Kitchen with { Agreement = new AgreementDocument { Household = household } }).Terms.Home.Count;
        Assert.Equal(Words(null) + 2, Words(new HouseholdDocument { Children = true, Pets = true }));
        Assert.All(Priced(Kitchen).Terms.Home, h => Assert.All(Invented.Voices, v => Assert.False(string.IsNullOrWhiteSpace(h(v)))));
    }

    public static TheoryData<string, AgreementDocument> Offenders => new()
    {
        { "CoatUnknown", new AgreementDocument { Options = [new OptionDocument { Name = "gloss", Coats = [new CoatOptionDocument { Coat = 9 }] }] } },
        { "CurrencyMixed", new AgreementDocument { Discount = "50 EUR" } },
        { "DayNotRead", new AgreementDocument { DepositInOn = "yesterday" } },
        { "VisitsOutOfRange", new AgreementDocument { Visits = 0 } },
        { "NameMissing", new AgreementDocument { Changes = [new ChangeDocument { Price = "5" }] } },
    };

    [Theory, MemberData(nameof(Offenders))]
    public void Bad_input_is_a_fault_at_its_place(string code, AgreementDocument agreement)
    {
        var job = Kitchen with { Agreement = agreement };
        var (whole, _) = WholeJob.From(job, []);
        var (priced, faults) = WholePrice.Of(job, whole!, [], new RatesDocument(), []);
        Assert.Null(priced);
        Assert.StartsWith("agreement.", Assert.Single(faults, f => f.Code == code).Path);
    }

    [Theory]
    [InlineData("SharesNotWhole")]
    [InlineData("CurrencyUnknown")]
    [InlineData("CallBacksOutOfRange")]
    [InlineData("DaysOutOfRange")]
    [InlineData("GivenByTooLong")]
    [InlineData("CurrencyMixed")]
    public void Rates_that_cannot_be_used_are_refused(string code)
    {
        var rates = code switch
        {
            "SharesNotWhole" => new RatesDocument { Stages = [new StageDocument { Name = "order", Share = "50 %" }] },
            "CurrencyUnknown" => new RatesDocument { Currency = "dollars" },
            "CallBacksOutOfRange" => new RatesDocument { CallBacks = new CallBacksDocument { Jobs = 2, CameBack = 3 } },
            "GivenByTooLong" => new RatesDocument { GivenBy = new string('x', 301) },
            "DaysOutOfRange" => new RatesDocument { ValidDays = 0 },
            _ => new RatesDocument { HourlyWage = "30 EUR" },
        };
        var read = RatesReading.Read(rates, UnitSystem.Us);
        Assert.Null(read.Rates);
        Assert.Contains(read.Faults, f => f.Code == code);
    }

    [Fact]
    public void The_fingerprint_changes_with_anything_it_was_made_from_and_with_nothing_else()
    {
        var one = Fingerprint.Of(Kitchen, [], new RatesDocument());
        Assert.Equal(one, Fingerprint.Of(Kitchen with { }, [], new RatesDocument()));
        Assert.NotEqual(one, Fingerprint.Of(Kitchen with { Name = "Other" }, [], new RatesDocument()));
        Assert.NotEqual(one, Fingerprint.Of(Kitchen, [], new RatesDocument { Margin = "21 %" }));
        Assert.Equal(64, one.Length);
    }

    [Fact]
    public void Two_quotes_say_what_differs()
    {
        IssuedQuote Quote(JobDocument job, RatesDocument rates)
        {
            var priced = Priced(job, rates);
            return new IssuedQuote { Job = job, Rates = rates, Products = QuoteIssuing.ProductsOf(job, []), Price = QuoteIssuing.Sums(priced.Price, [], Voice.Default) };
        }

        var (before, after) = (Quote(Kitchen, new RatesDocument()), Quote(Kitchen with { Agreement = new AgreementDocument { Discount = "20" } }, new RatesDocument { Margin = "25 %" }));
        Assert.Empty(QuoteIssuing.Differences(before, before with { }));
        var differ = QuoteIssuing.Differences(before, after);
        Assert.Contains(new QuoteDifference("job.agreement", null, "20"), differ);
        Assert.Contains(new QuoteDifference("rates.margin", null, "25 %"), differ);
        Assert.Contains(differ, d => d.Path == "price.total");
        Assert.DoesNotContain(differ, d => d.Path.StartsWith("product", StringComparison.Ordinal));
    }
}
