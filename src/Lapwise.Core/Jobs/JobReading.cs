namespace Lapwise.Core.Jobs;

/// <summary>Turns a document into a job: every quantity read, every range checked, every fault said with its path.</summary>
public static class JobReading
{
    public static JobRead Read(JobDocument document, IReadOnlyList<ProductDocument> library) => throw new NotSupportedException();
}
