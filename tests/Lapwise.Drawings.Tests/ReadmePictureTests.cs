using Lapwise.Core.Explain;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

/// <summary>The picture in the README is what the program draws today, not what it drew once.</summary>
public sealed class ReadmePictureTests
{
    private static readonly string Page = Path.Combine(Samples.Folder, "..", "docs", "plan.svg");

    // After a deliberate change of plan or drawing: LAPWISE_ACCEPT=1 rewrites the picture, and the change is seen in review.
    [Fact]
    public void It_is_the_order_of_work_of_the_sample_kitchen()
    {
        var whole = Samples.Whole("l-kitchen");
        var drawn = PlanDrawing.Draw(whole.Measured.Tops[0], whole.Work.Coats[^1], whole.Job.Crew, Voice.Default, Sheet.Wide).Svg() + "\n";
        if (Environment.GetEnvironmentVariable("LAPWISE_ACCEPT") == "1") File.WriteAllText(Page, drawn);

        Assert.Equal(File.ReadAllText(Page), drawn);
    }
}
