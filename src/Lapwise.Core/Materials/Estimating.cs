using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Materials;

/// <summary>How much of each product, in what mix?</summary>
public static class Estimating
{
    public static JobMaterials Estimate(Job job, MeasuredJob measured) => throw new NotSupportedException();
}
