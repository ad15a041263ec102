using CsCheck;
using Lapwise.Core.Explain;

namespace Lapwise.Verifier.Tests;

/// <summary>Jobs nobody drew: whatever is planned, the checker must find as the plan says.</summary>
public sealed class AnyJobTests
{
    private static readonly Gen<string> Edge = Gen.Frequency(
        (4, Gen.Const("{ kind: open, profile: { shape: eased, radius: 1/8 in } }")),
        (1, Gen.Const("{ kind: open, profile: { shape: fullRound } }")),
        (2, Gen.Const("{ kind: wall }")),
        (1, Gen.Const("{ kind: splash, height: 4 in, topWidth: 3/4 in, coatedEnds: 1 }")),
        (1, Gen.Const("{ kind: splash, height: 4 in, joint: true }")),
        (1, Gen.Const("{ kind: waterfall, drop: 34 in, return: 1 1/2 in }")));

    private static readonly Gen<string> Rectangle =
        from length in Gen.Int[12, 150]
        from depth in Gen.Int[8, 60]
        from edges in Edge.Array[4]
        from cutout in Gen.Bool
        from joint in Gen.Bool
        select $"    outline: {{ shape: rectangle, length: {length} in, depth: {depth} in }}\n" + Edges(["{ kind: open }", .. edges[1..]]) +
            (cutout && length > 30 && depth > 16 ? $"    cutouts: [{{ name: Hole, shape: circle, diameter: 10 in, along: {length / 2} in, in: {depth / 2} in, rim: 1 in }}]\n" : "") +
            (joint && length > 60 ? $"    breaks: [{{ side: A, at: {length / 3} in }}]\n" : "");

    private static readonly Gen<string> Corner =
        from length in Gen.Int[70, 140]
        from leg in Gen.Int[60, 110]
        from edges in Edge.Array[6]
        select $"    outline: {{ shape: l, length: {length} in, depth: 25 in, rightLegLength: {leg} in, rightLegDepth: 24 in }}\n" +
            Edges([edges[0], edges[1], edges[2], "{ kind: open }", "{ kind: open }", edges[5]]);

    private static readonly Gen<string> Round = Gen.Int[14, 48].Select(d => $"    outline: {{ shape: circle, diameter: {d} in }}\n" + Edges(["{ kind: open, profile: { shape: fullRound } }"]));

    private static readonly Gen<string> Job =
        from tops in Gen.Frequency((3, Rectangle), (2, Corner), (1, Round)).Array[1, 3]
        from wetOut in Gen.Int[3, 12]
        from surface in Gen.Int[65, 90]
        from share in Gen.Int[0, 30]
        from apart in Gen.Bool
        from coat in Gen.OneOf<string>("product: clear-fast-two-part, thinner: 1 %", "product: base-three-part, wetFilm: 8 mil")
        from largest in Gen.Int[12, 48]
        from crew in Gen.OneOf<string>("{ name: Ines, pace: { wetOut: WET ft²/min } }", "{ name: Ines, pace: { wetOut: WET ft²/min } }, { name: Tomas }")
        select $$"""
            lapwise: 1
            name: Any job
            room: { air: 73 °F, humidity: 45 %, surface: {{surface}} °F, material: 73 °F }
            crew: [{{crew.Replace("WET", $"{wetOut}")}}]
            aims: { marginShare: {{share}} % }
            system: [{{(apart ? "{ product: base-epoxy-amine, onTops: [Top 1] }, " : "")}}{ {{coat}} }]
            tools: { largestBatch: {{largest}} fl oz }
            tops:

            """ + string.Concat(tops.Select((top, i) => $"  - name: Top {i + 1}\n{top}"));

    [Fact]
    public void Every_plan_is_as_it_says() => Job.Sample(yaml =>
    {
        var planned = PlannedJob.Of(yaml);
        var violations = Verifying.Verify(planned.Job, planned.Measured, planned.Conditions, planned.Plan).Violations;
        Assert.Empty(violations.Select(v => v.Say(Voice.Default)));
    }, iter: 40, threads: 1);

    private static string Edges(IReadOnlyList<string> edges) =>
        "    edges:\n" + string.Concat(edges.Select((edge, i) => $"      {(char)('A' + i)}: {edge}\n"));
}
