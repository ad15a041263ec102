using System.Security.Cryptography;
using System.Text;
using Lapwise.Core.Jobs;
using Lapwise.Store;

namespace Lapwise.Server.Features.Days;

/// <summary>Everything the days are found from, as it stands in the store.</summary>
/// <param name="Mark">The same mark: the same input, and so the same answer.</param>
/// <param name="IsAfresh">As if nothing were settled, but for what is past.</param>
/// <param name="Today">On the clock of this machine. People are at work on it already: nothing new is placed before tomorrow.</param>
internal sealed record DaysInput(string Mark, IReadOnlyList<Listed> Jobs, DaysDocument Entered, IReadOnlyList<VisitDocument> Settled, DateOnly Today, bool IsAfresh)
{
    public DateOnly Tomorrow => Today.AddDays(1);
}

/// <summary>Reads the input out of the store.</summary>
internal sealed class DaysInputs(JobShelf jobs, ProductShelf products, DaysShelf days, SettledShelf settled, TimeProvider time)
{
    /// <summary>Only what tells it apart is read of jobs and coatings: their versions.</summary>
    public async Task<DaysInput> Now(bool isAfresh, CancellationToken cancel)
    {
        var (listed, coatings) = (await jobs.List(cancel), await products.List(cancel));
        var (entered, stood) = (await days.Find(RatesShelf.Own, cancel), await settled.Find(RatesShelf.Own, cancel));
        var document = entered?.Document ?? new DaysDocument();
        var leftOut = (document.Jobs ?? []).Where(j => j.LeaveOut == true).Select(j => j.Job).ToHashSet(StringComparer.Ordinal);
        IReadOnlyList<Listed> asked = [.. listed.Where(j => !leftOut.Contains(j.Id)).OrderBy(j => j.Id, StringComparer.Ordinal)];
        var today = DateOnly.FromDateTime(time.GetLocalNow().DateTime);
        var words = asked.Select(j => $"job {j.Id} {j.Version}").Concat(coatings.OrderBy(p => p.Id, StringComparer.Ordinal).Select(p => $"coating {p.Id} {p.Version}"))
            .Append($"entered {entered?.Version} settled {stood?.Version} day {today:yyyy-MM-dd}{(isAfresh ? " afresh" : "")}");
        return new DaysInput(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', words)))), asked, document, stood?.Document.Visits ?? [], today, isAfresh);
    }

    /// <summary>Those of these jobs whose deposit is not in.</summary>
    public async Task<IReadOnlyList<(string Job, string Name)>> WithoutDeposit(IReadOnlyList<string> ids, CancellationToken cancel)
    {
        List<(string, string)> without = [];
        foreach (var id in ids)
            if (await jobs.Find(id, cancel) is { Document: { } job } && string.IsNullOrWhiteSpace(job.Agreement?.DepositInOn)) without.Add((id, job.Name));
        return without;
    }
}
