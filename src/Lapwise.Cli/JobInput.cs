using Lapwise.Core;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Files;

namespace Lapwise.Cli;

/// <summary>A job as a command gets it: the document, its products, and how to speak of it.</summary>
internal sealed record JobInput(JobDocument Document, IReadOnlyList<ProductDocument> Products, Voice Voice, Func<IEnumerable<Fault>, IReadOnlyList<Fault>> WithLines)
{
    /// <summary>Every product that could be taken, read.</summary>
    public IReadOnlyList<Product> AllProducts => JobReading.ReadProducts(Document, Products);

    /// <summary>Reads the job and its products; null with every fault printed.</summary>
    public static JobInput? Read(Request request, Terminal terminal)
    {
        var file = request.Files[0];
        var read = DocumentFile.ReadJob(file, terminal.In);
        if (read.Document is not { } document)
        {
            Faults.Print(read.Faults, request.Voice, terminal);
            return null;
        }

        var voice = new Voice(request.Language ?? document.Language, request.Units ?? document.Units);
        var folder = request.Products ?? Path.Combine(Path.GetDirectoryName(file) ?? "", "products");
        if (request.Products is not null && !Directory.Exists(folder))
        {
            Faults.Print([new Fault("--products", "FolderNotFound",
                v => v.Say($"There is no folder {folder}.", $"No existe la carpeta {folder}."),
                v => v.Say("Give the folder that holds the products.", "Indique la carpeta de los productos."))], voice, terminal);
            return null;
        }

        var (products, faults) = DocumentFile.ReadProducts(folder);
        if (faults.Count == 0) return new JobInput(document, products, voice, read.WithLines);
        Faults.Print(faults, voice, terminal);
        return null;
    }

    /// <summary>The job through every phase; null with every fault printed, for a file is refused on any.</summary>
    public WholeJob? Work(Terminal terminal)
    {
        var (whole, faults) = terminal.Show(v => v.Say("Planning…", "Planificando…"), Voice, () => WholeJob.From(Document, Products));
        if (faults.Count == 0) return whole;
        Faults.Print(WithLines(faults), Voice, terminal);
        return null;
    }
}
