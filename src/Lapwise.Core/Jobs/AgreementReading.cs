using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What reading the agreement gave: what could be read, and every fault.</summary>
public sealed record AgreementRead(Agreement Agreement, IReadOnlyList<Fault> Faults);

/// <summary>Turns what was talked over into an agreement, or into faults at their place in the job.</summary>
public static class AgreementReading
{
    private const int MostOptions = 12;
    private const int MostChanges = 100;
    private const int MostVisits = 100;

    /// <summary>The sample board: no colour is bought that it does not cover. A day that cannot be read is not signed.</summary>
    public static SampleBoard Board(JobDocument job)
    {
        var fields = new Fields(job.Units);
        var board = ReadBoard(fields, job.Agreement?.SampleBoard);
        return fields.Count == 0 ? board : board with { SignedOn = null };
    }

    public static AgreementRead Read(JobDocument job, Currency currency)
    {
        var document = job.Agreement ?? new AgreementDocument();
        var fields = new Fields(job.Units);
        if (document.Visits is < 1 or > MostVisits)
        {
            fields.Add("agreement.visits", "VisitsOutOfRange",
                v => v.Say($"{document.Visits} visits cannot be right.", $"{document.Visits} visitas no puede ser."),
                v => v.Say($"Enter 1 to {MostVisits}.", $"Escriba de 1 a {MostVisits}."));
        }

        var discount = document.Discount is { IsBlank: false } off ? fields.Money("agreement.discount", off, currency) : MoneyAmount.Zero(currency);
        var options = new List<OtherWay>();
        foreach (var (option, path) in fields.Items("agreement.options", document.Options, MostOptions))
            if (Apply(fields, path, option, job) is { } changed) options.Add(changed);

        var changes = new List<AgreedChange>();
        foreach (var (change, path) in fields.Items("agreement.changes", document.Changes, MostChanges))
        {
            var before = fields.Count;
            var read = new AgreedChange(
                fields.Name(path + ".what", change.What),
                fields.Money(path + ".price", change.Price, currency, mayBeNegative: true).Rounded(),
                fields.DayOrNull(path + ".signedOn", change.SignedOn));
            if (fields.Count == before) changes.Add(read);
        }

        var household = document.Household ?? new HouseholdDocument();
        return new AgreementRead(
            new Agreement(
                (document.Customer ?? "").Trim(), document.Visits, discount.Rounded(), options,
                new Household(household.Children ?? false, household.Pets ?? false, household.OtherKitchen ?? false),
                ReadBoard(fields, document.SampleBoard),
                fields.DayOrNull("agreement.depositInOn", document.DepositInOn), changes),
            fields.Faults);
    }

    private static SampleBoard ReadBoard(Fields fields, SampleBoardDocument? board) =>
        new((board?.Shows ?? "").Trim(), fields.DayOrNull("agreement.sampleBoard.signedOn", board?.SignedOn));

    /// <summary>The job as it would be with the option.</summary>
    private static OtherWay? Apply(Fields fields, string path, OptionDocument option, JobDocument job)
    {
        var before = fields.Count;
        var name = fields.Name(path + ".name", option.Name);
        var system = job.System.ToList();
        foreach (var (coat, at) in fields.Items(path + ".coats", option.Coats, Ranges.MostCoats))
        {
            if (coat.Coat < 1 || coat.Coat > system.Count)
            {
                fields.Add(at + ".coat", "CoatUnknown",
                    v => v.Say($"The job has no coat {coat.Coat}.", $"El trabajo no tiene capa {coat.Coat}."),
                    v => v.Say($"Name one from 1 to {system.Count}.", $"Nombre una de 1 a {system.Count}."));
                continue;
            }

            var was = system[coat.Coat - 1];
            system[coat.Coat - 1] = coat.Product is { Length: > 0 } product
                ? new CoatDocument { Product = product, Color = coat.Color ?? was.Color, OnTops = was.OnTops } // film, thinner and test board belong to the other product
                : was with { Color = coat.Color ?? was.Color };
        }

        if (fields.Count > before) return null;
        var tops = option.Edge is { } edge
            ? [.. job.Tops.Select(t => t with { Edges = t.Edges.ToDictionary(e => e.Key, e => e.Value.Kind == EdgeKind.Open ? e.Value with { Profile = edge } : e.Value, StringComparer.Ordinal) })]
            : job.Tops;
        return new OtherWay(name, job with { Tops = tops, System = system, Agreement = (job.Agreement ?? new AgreementDocument()) with { Options = null } }, path);
    }
}
