using System.Collections.Frozen;
using System.Diagnostics.CodeAnalysis;

namespace Lapwise.Core.Quantities;

/// <summary>A currency of ISO 4217: its code, and how many decimals its smallest coin has on paper.</summary>
public sealed record Currency
{
    // ISO 4217 list one, recalled and held by a test against ICU. Codes that are not spent (gold, test, funds) are left out.
    private const string TwoDecimals =
        "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK " +
        "DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT " +
        "LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN " +
        "QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS " +
        "VES WST XCD YER ZAR ZMW";
    private const string NoDecimals = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
    private const string ThreeDecimals = "BHD IQD JOD KWD LYD OMR TND";

    private Currency(string code, int decimals) => (Code, Decimals) = (code, decimals);

    /// <summary>Three capital letters, as USD.</summary>
    public string Code { get; }

    /// <summary>0, 2 or 3.</summary>
    public int Decimals { get; }

    /// <summary>The smallest amount that is written.</summary>
    public decimal Step => new(1, 0, 0, isNegative: false, (byte)Decimals);

    public static Currency UsDollar { get; } = new("USD", 2);

    public static IReadOnlyList<Currency> All { get; } =
    [
        .. TwoDecimals.Split(' ').Select(code => new Currency(code, 2)),
        .. NoDecimals.Split(' ').Select(code => new Currency(code, 0)),
        .. ThreeDecimals.Split(' ').Select(code => new Currency(code, 3)),
    ];

    private static readonly FrozenSet<string> Codes = All.Select(c => c.Code).ToFrozenSet(StringComparer.Ordinal);

    /// <summary>Whether a word of a text is the code of a currency, in capitals.</summary>
    public static bool IsCode(ReadOnlySpan<char> word) => word.Length == 3 && Codes.GetAlternateLookup<ReadOnlySpan<char>>().Contains(word);

    /// <summary>By its code, in capitals or not.</summary>
    public static bool TryOf(string? code, [NotNullWhen(true)] out Currency? currency)
    {
        var wanted = (code ?? "").Trim();
        currency = All.FirstOrDefault(c => c.Code.Equals(wanted, StringComparison.OrdinalIgnoreCase));
        return currency is not null;
    }

    public override string ToString() => Code;
}
