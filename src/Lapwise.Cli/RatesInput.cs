using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files;

namespace Lapwise.Cli;

/// <summary>The shop's rates: the file that --rates names, or rates.yaml beside the first job.</summary>
internal static class RatesInput
{
    /// <summary>Null where the file cannot be read; its faults are printed then. As nobody entered them where there is no file.</summary>
    public static RatesDocument? Read(Request request, Terminal terminal, Voice v)
    {
        var beside = Path.Combine(Path.GetDirectoryName(request.Files[0]) ?? "", "rates.yaml");
        if (request.Rates is null && !File.Exists(beside)) return new RatesDocument();
        var read = DocumentFile.ReadRates(request.Rates ?? beside, terminal.In);
        if (read.Document is { } rates) return rates;
        Faults.Print(read.Faults, v, terminal);
        return null;
    }
}
