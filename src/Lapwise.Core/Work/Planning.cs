using Lapwise.Core.Conditions;
using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Measure;

namespace Lapwise.Core.Work;

/// <summary>Which sections, in which order, and when to mix?</summary>
public static class Planning
{
    public static JobWork Plan(Job job, MeasuredJob measured, JobMaterials materials, JobConditions conditions) => throw new NotSupportedException();
}
