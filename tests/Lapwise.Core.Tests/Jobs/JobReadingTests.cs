using Lapwise.Core.Jobs;

namespace Lapwise.Core.Tests.Jobs;

public sealed class JobReadingTests
{
    [Fact]
    public void Read_of_a_job_without_fault_gives_every_quantity_in_base_units()
    {
        var read = JobReading.Read(Written.Job, [Written.Clear]);

        Assert.Empty(read.Faults);
        var job = read.Job!;
        Assert.Equal((71 - 32) / 1.8, job.Room.Air.Celsius, 12);
        Assert.Equal(0.48, job.Room.RelativeHumidity, 12);

        var top = Assert.Single(job.Tops);
        var outline = Assert.IsType<OutlineSpec.Rectangle>(top.Outline);
        Assert.Equal(1.8288, outline.LengthM, 12);
        Assert.Equal(0.9144, outline.DepthM, 12);
        Assert.Equal(0.0254 / 16, outline.TapeStepM, 12);
        Assert.Equal(0.0381, top.ThicknessM, 12);
        Assert.Equal(["A", "B", "C", "D"], top.Edges.Keys.Select(k => k.ToString()));
        Assert.Equal(0.0254 / 8, Assert.IsType<Edge.Open>(top.Edges['A']).Profile.RadiusM, 12);
        Assert.Equal(new Edge.Splash(4 * 0.0254, 0.75 * 0.0254, 2, false), top.Edges['B']);
        Assert.IsType<Edge.Wall>(top.Edges['C']);
        Assert.Equal(34.5 * 0.0254, Assert.IsType<Edge.Waterfall>(top.Edges['D']).DropM, 12);

        var coat = Assert.Single(job.System);
        Assert.Equal(6.5 * 25.4, coat.WetFilm.Micrometres, 10);
        Assert.Equal(0.01, coat.ThinnerFraction, 12);
        Assert.Equal(2.0 / 3, coat.Product.Recipe.Of(1)[0].Ml, 12);
    }
}
