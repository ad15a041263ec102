using Lapwise.Core.Jobs;
using Lapwise.Core.Materials;
using Lapwise.Core.Work;

namespace Lapwise.Core.Supply;

/// <summary>Which kits to buy and what goes into each batch?</summary>
public static class Supplying
{
    public static JobSupply Supply(Job job, JobMaterials materials, JobWork work) => throw new NotSupportedException();
}
