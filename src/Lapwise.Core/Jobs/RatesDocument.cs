using System.Text.Json.Serialization;
using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What the shop charges by, as entered. What is left out takes a stated default, and is shown as such.</summary>
public sealed record RatesDocument
{
    public const int CurrentVersion = 1;

    /// <summary>Version of this shape; readers refuse a newer one.</summary>
    public int Lapwise { get; set; } = CurrentVersion;
    /// <summary>Who gives a quote, as its papers name them: business, address, telephone, licence.</summary>
    public string? GivenBy { get; set; }
    /// <summary>The shop's one currency (ISO 4217), as <c>USD</c>.</summary>
    public string Currency { get; set; } = "USD";
    /// <summary>What one hour of a person is paid.</summary>
    public Entry? HourlyWage { get; set; }
    /// <summary>What an employer pays on top of the wage, as a share of it.</summary>
    public Entry? Burden { get; set; }
    /// <summary>Material spilled, spoiled or thrown away beyond what the plan counts, as a share of it.</summary>
    public Entry? Waste { get; set; }
    /// <summary>What of the kits a job pays for.</summary>
    public MaterialCharge? MaterialCharge { get; set; }
    /// <summary>Masking, naps, liners, cups, gloves and cartridges of one coat.</summary>
    public Entry? ConsumablesPerCoat { get; set; }
    /// <summary>The same of one job, whatever its coats: sheeting, tape, abrasive.</summary>
    public Entry? ConsumablesPerJob { get; set; }
    /// <summary>Driving out once, to and fro.</summary>
    public Entry? TravelPerVisit { get; set; }
    /// <summary>Rent, insurance, tools, office: a share of labour, material, consumables and travel.</summary>
    public Entry? Overhead { get; set; }
    /// <summary>Profit as a share of the price (not of the cost: that is the markup).</summary>
    public Entry? Margin { get; set; }
    /// <summary>Tax on what is sold, as a share of it; left out: none is added.</summary>
    public Entry? Tax { get; set; }
    /// <summary>What the tax is on.</summary>
    public Taxed? Taxed { get; set; }
    /// <summary>Least a job is done for, before tax.</summary>
    public Entry? MinimumCharge { get; set; }
    /// <summary>When the price is paid, in order; the first is the deposit. The shares come to 100 %.</summary>
    public IReadOnlyList<StageDocument>? Stages { get; set; }
    /// <summary>Days a quote holds from the day it is given out.</summary>
    public int? ValidDays { get; set; }
    /// <summary>What came back to be mended.</summary>
    public CallBacksDocument? CallBacks { get; set; }
}

/// <summary>What of the kits a job pays for.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<MaterialCharge>))]
public enum MaterialCharge
{
    /// <summary>Whole kits, what is left over too.</summary>
    WholeKits,
    /// <summary>What is needed; what is left over goes to the shelf.</summary>
    WhatIsNeeded,
}

/// <summary>What a tax is on; which it is, local law says.</summary>
[JsonConverter(typeof(CamelCaseEnumConverter<Taxed>))]
public enum Taxed { Everything, MaterialOnly }

/// <summary>One payment.</summary>
public sealed record StageDocument
{
    /// <summary>When it is due, in the words of the quote.</summary>
    public string Name { get; set; } = "";
    /// <summary>Share of the price.</summary>
    public Entry Share { get; set; } = "";
}

/// <summary>Jobs done, and how many of them came back.</summary>
public sealed record CallBacksDocument
{
    /// <summary>Jobs looked back on.</summary>
    public int Jobs { get; set; }
    /// <summary>Of them, those that had to be gone back to.</summary>
    public int CameBack { get; set; }
    /// <summary>What going back cost on average; left out: a visit and three hours.</summary>
    public Entry? CostEach { get; set; }
}
