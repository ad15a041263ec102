using System.Net;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using static Lapwise.Server.Tests.RunningServer;

namespace Lapwise.Server.Tests.Features.Work;

public sealed class PlanOfJobTests(RunningServer server) : IClassFixture<RunningServer>
{
    [Fact]
    public async Task The_servers_plan_is_the_cores_plan_to_the_last_digit()
    {
        var (whole, _) = WholeJob.From(await Read("/api/jobs/demo", JobJson.Default.JobDocument), await Read("/api/products", JobJson.Default.IReadOnlyListProductDocument));
        var own = JsonSerializer.Serialize(Answering.Plan(whole!, Voice.Default), AnswerJson.Default.PlanAnswer);
        var answer = await Read("/api/jobs/demo/plan", AnswerJson.Default.PlanAnswer);
        Assert.Equal(own, JsonSerializer.Serialize(answer, AnswerJson.Default.PlanAnswer));
    }

    [Theory]
    [InlineData("takeoff")]
    [InlineData("materials")]
    [InlineData("plan")]
    [InlineData("sheet")]
    [InlineData("sheet.pdf")]
    public async Task A_job_with_a_fault_is_refused_with_the_fault_at_its_place(string what)
    {
        var demo = await Read("/api/jobs/demo", JobJson.Default.JobDocument);
        var job = demo with { Room = demo.Room with { Humidity = "140 %" } };
        await server.Send(HttpMethod.Put, "/api/jobs/damp-" + what.Replace('.', '-'), Json(job), ifNone: true);

        var answer = await server.Send(HttpMethod.Get, $"/api/jobs/damp-{what.Replace('.', '-')}/{what}");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType!.MediaType);
        Assert.Contains((await Body(answer)).GetProperty("faults").EnumerateArray(), f => f.GetProperty("path").GetString() == "room.humidity");
    }

    [Theory]
    [InlineData("takeoff")]
    [InlineData("plan")]
    [InlineData("sheet.pdf")]
    public async Task A_job_that_is_not_there_is_a_problem(string what) =>
        Assert.Equal(HttpStatusCode.NotFound, (await server.Send(HttpMethod.Get, "/api/jobs/nobody/" + what)).StatusCode);

    [Fact]
    public async Task The_sheet_comes_as_a_page_in_the_language_asked_for_and_as_a_pdf()
    {
        var page = await server.Send(HttpMethod.Get, "/api/jobs/demo/sheet?language=es&units=metric");
        Assert.Equal("text/html", page.Content.Headers.ContentType!.MediaType);
        Assert.Contains("Hoja de trabajo", await page.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);

        var pdf = await server.Send(HttpMethod.Get, "/api/jobs/demo/sheet.pdf");
        Assert.Equal("application/pdf", pdf.Content.Headers.ContentType!.MediaType);
        Assert.Equal("%PDF-"u8.ToArray(), (await pdf.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken))[..5]);
    }

    private async Task<T> Read<T>(string address, System.Text.Json.Serialization.Metadata.JsonTypeInfo<T> json) =>
        JsonSerializer.Deserialize(await server.Http.GetStringAsync(address, TestContext.Current.CancellationToken), json)!;
}
