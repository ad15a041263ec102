using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Core.Work;
using Lapwise.Core.Work.Moments;
using Lapwise.Shared;

namespace Lapwise.Drawings.Tests;

public class MomentDrawingTests
{
    private static readonly Voice Us = new(Language.English, UnitSystem.Us);
    private static readonly Sheet Phone = new(352, 270, 10.5);

    public static TheoryData<string> EverySample() => [.. Samples.Names];

    /// <summary>Every top of every coat at eight moments from its beginning to its end.</summary>
    private static IEnumerable<(MeasuredTop Top, CoatWork Work, IReadOnlyList<Person> Crew, Moment Moment, Drawing Drawing)> Moments(string sample)
    {
        var whole = Samples.Whole(sample);
        foreach (var work in whole.Work.Coats)
            foreach (var top in whole.Measured.Tops.Where(t => work.Sections.Any(s => s.Face.Top == t.Top.Name)))
            {
                var picture = new MomentDrawing(top, work, whole.Job.Crew, Phone);
                for (var i = 0; i <= 7; i++)
                {
                    var moment = PlanClock.At(work, whole.Job.Crew, PlanClock.EndMs(work) * i / 7);
                    yield return (top, work, whole.Job.Crew, moment, picture.At(moment, Us));
                }
            }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void At_every_moment_each_section_has_its_number_and_the_wash_of_its_state(string sample)
    {
        foreach (var (top, _, _, moment, drawing) in Moments(sample))
        {
            var read = new Read(drawing.Svg());
            var own = moment.Sections.Where(s => s.Section.Face.Top == top.Top.Name).ToList();
            Assert.Equal(own.Select(s => s.Section.Id).Order(StringComparer.Ordinal), read.OfClass("lw-t-number").Select(t => t.Value).Order(StringComparer.Ordinal));
            int In(params SectionState[] states) => own.Count(s => states.Contains(s.State));
            Assert.Equal(In(SectionState.Untouched), read.OfClass("lw-blank").Count());
            Assert.Equal(In(SectionState.Wetting, SectionState.Finishing, SectionState.Open), read.OfClass("lw-wet").Count());
            Assert.Equal(In(SectionState.Joined), read.OfClass("lw-joined").Count());
            Assert.Equal(In(SectionState.Closed), read.OfClass("lw-shut").Count());
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void At_every_moment_whoever_works_on_the_top_stands_at_it_by_name(string sample)
    {
        foreach (var (top, work, crew, moment, drawing) in Moments(sample))
        {
            var here = moment.People.Where(p => p.Doing switch
            {
                Doing.Rolls rolls => rolls.Section.Face.Top == top.Top.Name,
                Doing.Steps steps => steps.Step.Sections.Count > 0 && work.Sections.Single(s => s.Id == steps.Step.Sections[0]).Face.Top == top.Top.Name,
                _ => false,
            });
            var read = new Read(drawing.Svg());
            Assert.Equal(here.Select(p => crew[p.Person].Name).Order(StringComparer.Ordinal), read.OfClass("lw-t-letter").Select(t => t.Value).Order(StringComparer.Ordinal));
            Assert.Equal(here.Count(), read.OfClass("lw-stand").Count());
        }
    }

    [Theory]
    [MemberData(nameof(EverySample))]
    public void The_picture_keeps_its_size_while_the_clock_runs_and_its_texts_stay_on_it(string sample)
    {
        foreach (var one in Moments(sample).GroupBy(m => (m.Top, m.Work)))
        {
            Assert.Single(one.Select(m => (m.Drawing.Width, m.Drawing.Height)).Distinct());
            Assert.All(one, m => Assert.All(m.Drawing.Marks.OfType<Mark.Text>(), text =>
            {
                Assert.InRange(text.Box.Left, -1, m.Drawing.Width);
                Assert.InRange(text.Box.Right, 0, m.Drawing.Width + 1);
                Assert.InRange(text.Box.Top, -1, m.Drawing.Height);
                Assert.InRange(text.Box.Bottom, 0, m.Drawing.Height + 1);
            }));
        }
    }

    [Fact]
    public void What_is_left_of_the_open_time_stands_in_the_wet_sections()
    {
        var whole = Samples.Whole("l-kitchen");
        var work = whole.Work.Coats[^1];
        var section = work.Sections[4];
        var moment = PlanClock.At(work, whole.Job.Crew, section.StartMs);
        var top = whole.Measured.Tops.Single(t => t.Top.Name == section.Face.Top);
        var drawing = new MomentDrawing(top, work, whole.Job.Crew, new Sheet(760, 560, 12)).At(moment, Us);
        var words = new Read(drawing.Svg()).Words;
        foreach (var open in moment.Sections.Where(s => s.State == SectionState.Open && s.Section.Face.Kind == FaceKind.Flat && s.Section.Face.Top == top.Top.Name))
            Assert.Contains($"{Voice.Clock(open.OpenLeftMs / 1000.0)} left", words);
        Assert.Contains(whole.Job.Crew[section.Person].Name, words);
        Assert.Contains(section.Id, drawing.Description, StringComparison.Ordinal);
    }
}
