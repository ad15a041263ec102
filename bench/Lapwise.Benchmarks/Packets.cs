using System.Diagnostics;
using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Documents;

namespace Lapwise.Benchmarks;

/// <summary>Everything for the day of a job of twelve tops, as a PDF.</summary>
public static class Packets
{
    public static void Run(Options options)
    {
        var (whole, faults) = WholeJob.From(Samples.TwelveTops(), Samples.Library);
        if (whole is null || faults.Count > 0) throw new InvalidOperationException("the job of twelve tops no longer reads");
        var basis = new PaperBasis((coat, batch) => $"https://shop.example:5443/jobs/demo/supply?coat={coat + 1}&batch={batch}", []);
        var tickets = whole.Supply.Coats.Sum(c => c.Tickets.Count);

        Report.Write(options, "packet",
        [
            "# A PDF packet of a job of twelve tops",
            "",
            $"Lists, {tickets} batch tickets with their codes, days and care sheet; the job is planned before. 20 runs after the first. {Report.Machine}.",
            "",
            .. Report.Table(["paper", "first", "median", "slowest", "size", "aim"],
            [
                Row("packet", "1 s", () => Papers.Pdf(PaperKind.Packet, whole, Voice.Default, basis)),
                Row("tickets alone", "", () => Papers.Pdf(PaperKind.Tickets, whole, Voice.Default, basis)),
                Row("job sheet, drawings and all", "", () => JobSheet.Pdf(whole, Voice.Default)),
            ]),
        ]);
    }

    private static string[] Row(string what, string aim, Func<byte[]> work)
    {
        var (times, size) = (new List<double>(), 0);
        for (var i = 0; i < 21; i++)
        {
            var watch = Stopwatch.StartNew();
            size = work().Length;
            times.Add(watch.Elapsed.TotalSeconds);
        }

        return [what, Report.Time(times[0]), Report.Time(Report.Median(times.Skip(1))), Report.Time(times.Skip(1).Max()), $"{size / 1024} kB", aim];
    }
}
