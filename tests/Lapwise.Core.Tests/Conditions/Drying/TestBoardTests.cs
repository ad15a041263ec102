using CsCheck;
using Lapwise.Core.Conditions;
using Lapwise.Core.Conditions.Drying;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Tests.Conditions.Drying;

public sealed class TestBoardTests
{
    [Fact]
    public void The_laps_rise_and_take_the_expected_time_between_them() => Gen.Double[120, 7200].Sample(expected =>
    {
        var laps = TestBoard.LapsAt(expected);
        Assert.True(laps.Zip(laps.Skip(1)).All(p => p.First < p.Second));
        Assert.InRange(expected, laps[0], laps[^1]);
        Assert.All(laps, l => Assert.Equal(0, l % 30));
    });

    [Fact]
    public void The_guide_is_said_in_both_languages() => Said.InEveryVoice(TestBoard.Steps(TestBoard.LapsAt(660)));

    [Fact]
    public void The_result_is_the_interval_between_the_last_good_and_the_first_bad() =>
        Assert.Equal(new BoardResult(600, 690), TestBoard.Read([new(510, false), new(600, false), new(690, true), new(780, true)]).Result);

    [Fact]
    public void A_board_that_never_showed_has_no_upper_end() => Assert.Equal(new BoardResult(900, null), TestBoard.Read([new(600, false), new(900, false)]).Result);

    [Theory]
    [InlineData("NoGoodLap", true, true)]
    [InlineData("BoardOutOfOrder", true, false)]
    public void A_board_that_tells_nothing_is_refused(string code, bool first, bool second)
    {
        var fault = TestBoard.Read([new(300, first), new(600, second)]).Fault!;
        Assert.Equal(code, fault.Code);
        Said.InEveryVoice([fault.Text, fault.Cure]);
    }

    [Fact]
    public void Both_ends_of_the_interval_stand_beside_the_margin()
    {
        var coat = Invented.Coat with { TestBoard = new OpenTime(600, Origin.TestBoard), TestBoardFirstBadS = 690 };
        var basis = Judging.Judge(Invented.Job with { System = [coat] }).Coats[0].OpenTimeBasis;
        Assert.Equal(["10 min", "11 min 30 s"], basis.Inputs.Select(i => i.Value(Invented.Voices[0])));
    }
}
