using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using Lapwise.Core;
using Lapwise.Core.Answers;
using Lapwise.Core.Conditions;
using Lapwise.Core.Explain;
using Lapwise.Core.Jobs;
using Lapwise.Core.Measure;
using Lapwise.Files;

namespace Lapwise.Verifier.Tests;

/// <summary>A job with the plan that the program makes of it, passed through JSON as a file would be.</summary>
internal sealed record PlannedJob(Job Job, MeasuredJob Measured, JobConditions Conditions, Plan Plan)
{
    private static readonly string Samples = Path.Combine(typeof(PlannedJob).Assembly
        .GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == "RepositoryRoot").Value!, "samples");

    private static readonly ConcurrentDictionary<string, PlannedJob> Kept = new(StringComparer.Ordinal);

    public static IEnumerable<string> AllSamples => Directory.EnumerateFiles(Samples, "*.job.yaml").Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal);

    public static PlannedJob Sample(string name) => Kept.GetOrAdd(name, n => Of(File.ReadAllText(Path.Combine(Samples, n))));

    public static PlannedJob Of(string yaml) => Kept.GetOrAdd(yaml, y =>
    {
        var (products, faults) = DocumentFile.ReadProducts(Path.Combine(Samples, "products"));
        Assert.Empty(faults);
        var read = DocumentFile.ReadJob(y);
        Assert.NotNull(read.Document);
        var (whole, slips) = WholeJob.From(read.Document, products);
        Assert.Empty(slips);
        var json = JsonSerializer.Serialize(Answering.Plan(whole!, Voice.Default), AnswerJson.Default.PlanAnswer);
        var (plan, notPlan) = Plan.Read(json);
        Assert.Empty(notPlan);
        return new PlannedJob(whole!.Job, whole.Measured, whole.Conditions, plan!);
    });

    public IReadOnlyList<string> Violations(Plan plan) => [.. Verifying.Verify(Job, Measured, Conditions, plan).Violations.Select(v => v.Code).Distinct(StringComparer.Ordinal)];

    /// <summary>What the checker says once the last coat is changed.</summary>
    public IReadOnlyList<string> Violations(Func<PlannedCoat, PlannedCoat> change) =>
        Violations(Plan with { Coats = [.. Plan.Coats.SkipLast(1), change(Plan.Coats[^1])] });
}
