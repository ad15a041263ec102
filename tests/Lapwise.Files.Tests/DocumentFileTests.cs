using Lapwise.Core.Jobs;

namespace Lapwise.Files.Tests;

public sealed class DocumentFileTests
{
    public static TheoryData<string> Jobs => [.. Repository.Samples("*.job.yaml").Select(p => Path.GetFileName(p)!)];
    public static TheoryData<string> Products => [.. Repository.Samples("*.product.yaml").Select(p => Path.GetFileName(p)!)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_job_survives_both_forms(string sample)
    {
        var job = DocumentFile.ReadJob(File.ReadAllText(Repository.Path("samples", sample))).Document!;
        foreach (var form in Enum.GetValues<DocumentForm>())
            Assert.Equal(JobFile.Write(job), JobFile.Write(DocumentFile.ReadJob(DocumentFile.Write(job, form)).Document!));
    }

    [Theory]
    [MemberData(nameof(Products))]
    public void A_product_survives_both_forms(string sample)
    {
        var product = DocumentFile.ReadProduct(File.ReadAllText(Repository.Path("samples", "products", sample))).Document!;
        foreach (var form in Enum.GetValues<DocumentForm>())
            Assert.Equal(JobFile.Write(product), JobFile.Write(DocumentFile.ReadProduct(DocumentFile.Write(product, form)).Document!));
    }

    [Fact]
    public void Lengths_stay_as_people_wrote_them()
    {
        var job = DocumentFile.ReadJob(File.ReadAllText(Repository.Path("samples", "l-kitchen.job.yaml"))).Document!;
        Assert.Equal("11' 0\"", job.Tops[0].Outline.Length!.Value.Text);
        Assert.Equal("25 1/2 in", job.Tops[0].Outline.Depth!.Value.Text);
        Assert.Contains("depth: 25 1/2 in", DocumentFile.Write(job, DocumentForm.Yaml));
    }

    [Fact]
    public void The_samples_products_fill_in_every_field()
    {
        var (products, faults) = DocumentFile.ReadProducts(Repository.Path("samples", "products"));
        Assert.Empty(faults);
        Assert.Equal(5, products.Count);
        Assert.All(typeof(ProductDocument).GetProperties(), p => Assert.Contains(products, product => p.GetValue(product) is not null));
    }

    [Fact]
    public void A_fault_carries_the_line_of_the_yaml()
    {
        var read = DocumentFile.ReadJob("lapwise: 1\nname: x\n\nroom:\n  air: 70 °F\n  humidty: 45 %\n");
        var fault = Assert.Single(read.Faults);
        Assert.Equal(("room.humidty", 6), (fault.Path, fault.Line));
    }

    [Fact]
    public void A_folder_that_is_not_there_holds_no_products() => Assert.Equal(([], []), DocumentFile.ReadProducts("no-such-folder"));
}
