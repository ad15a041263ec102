using Lapwise.Core.Bases;
using Lapwise.Core.Explain;
using Lapwise.Core.OnSite;
using Lapwise.Core.Tests.OnSite;

namespace Lapwise.Core.Tests.Bases;

public sealed class RunBasesTests
{
    private const long Minute = Runs.Minute;

    [Fact]
    public void What_stands_on_the_clocks_on_site_opens_to_the_plan_and_the_marks()
    {
        var phone = new Phone("a").Taps(new What.Issued(Runs.Path(3)));
        foreach (var point in Preparation.All) phone.Taps(new What.Checked(point.Id));
        phone.Taps(new What.BatchMixed("A", 0)).Waits(2 * Minute).Taps(new What.SectionWet("1", 0)).Waits(2 * Minute).Taps(new What.SectionDry("1", 0)).Waits(Minute);
        var (run, present) = (phone.Run, Presenting.Present(phone.Run, phone.RunNow));

        Basis[] bases = [RunBases.Lap(run, present.NextLap!), RunBases.Batch(run, present.Cups[0]), RunBases.Forecast(run, present.Forecast)];
        Assert.All(bases, b =>
        {
            Assert.True(b.Inputs.Count >= 2, b.Formula);
            Assert.All(b.Inputs, i => Said.InEveryVoice([i.Name]));
            Assert.All(Invented.Voices, voice => Assert.All(b.Inputs, i => Assert.False(string.IsNullOrWhiteSpace(i.Value(voice)))));
        });
        // The film of section 1 counts since it was marked wet, and the lap's clock is the open time less what has passed since.
        Assert.Contains(bases[0].Inputs, i => i.Name(Voice.Default).Contains("section 1", StringComparison.Ordinal));
        Assert.Equal(run.Plan.OpenTimeMs - (present.NowMs - run.FilmSinceMs(run.Sections["1"])), present.NextLap!.LeftMs);
    }
}
