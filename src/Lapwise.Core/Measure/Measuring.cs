using Lapwise.Core.Jobs;

namespace Lapwise.Core.Measure;

/// <summary>What is there to coat, and is my tape right?</summary>
public static class Measuring
{
    public static MeasuredJob Measure(Job job) => throw new NotSupportedException();
}
