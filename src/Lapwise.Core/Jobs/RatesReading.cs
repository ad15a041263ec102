using Lapwise.Core.Explain;
using Lapwise.Core.Quantities;

namespace Lapwise.Core.Jobs;

/// <summary>What reading the rates gave; null with every fault where the price would rest on a misreading.</summary>
public sealed record RatesRead(Rates? Rates, IReadOnlyList<Fault> Faults);

/// <summary>Turns the rates as entered into numbers, or into faults.</summary>
public static class RatesReading
{
    /// <summary>Figures of this program where the shop has entered none: a place to begin, no advice on what to charge.</summary>
    private static class Guess
    {
        public const decimal Wage = 30;
        public const decimal Burden = 0.25m;
        public const decimal Waste = 0.05m;
        public const decimal ConsumablesPerCoat = 20;
        public const decimal ConsumablesPerJob = 40;
        public const decimal TravelPerVisit = 25;
        public const decimal Overhead = 0.15m;
        public const decimal Margin = 0.20m;
        public const int ValidDays = 30;
    }

    private const int MostStages = 12;
    private const int LongestGivenBy = 300;
    private const int MostDays = 3650;

    public static RatesRead Read(RatesDocument document, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (DocumentVersion.Refuse("lapwise", document.Lapwise, RatesDocument.CurrentVersion) is { } refused) return new RatesRead(null, [refused]);
        var fields = new Fields(units);
        if (!Currency.TryOf(document.Currency, out var currency))
        {
            fields.Add("currency", "CurrencyUnknown",
                v => v.Say($"{Misreads.Quote(v, document.Currency)} is not the code of a currency (ISO 4217).", $"{Misreads.Quote(v, document.Currency)} no es el código de una moneda (ISO 4217)."),
                v => v.Say("Write three letters, such as USD.", "Escriba tres letras, como USD."));
            return new RatesRead(null, fields.Faults);
        }

        var assumed = new List<Phrase>();
        MoneyAmount Money(string path, Entry? entry, decimal guess, Phrase name)
        {
            if (entry is { IsBlank: false }) return fields.Money(path, entry, currency);
            assumed.Add(v => $"{name(v)}: {v.Money(new MoneyAmount(guess, currency))}");
            return new MoneyAmount(guess, currency);
        }

        decimal Share(string path, Entry? entry, decimal guess, Bounds bounds, Phrase name)
        {
            if (entry is { IsBlank: false } said) return Exact(fields.Share(path, said, bounds));
            assumed.Add(v => $"{name(v)}: {v.Percent((double)guess)}");
            return guess;
        }

        var givenBy = ReadGivenBy(fields, document.GivenBy, assumed);
        var wage = Money("hourlyWage", document.HourlyWage, Guess.Wage, v => v.Say("wage of an hour", "salario por hora"));
        var burden = Share("burden", document.Burden, Guess.Burden, Ranges.Burden, v => v.Say("burden on wages", "cargas sobre el salario"));
        var waste = Share("waste", document.Waste, Guess.Waste, Ranges.Loss, v => v.Say("waste of material", "merma de material"));
        var perCoat = Money("consumablesPerCoat", document.ConsumablesPerCoat, Guess.ConsumablesPerCoat, v => v.Say("consumables of a coat", "consumibles por capa"));
        var perJob = Money("consumablesPerJob", document.ConsumablesPerJob, Guess.ConsumablesPerJob, v => v.Say("consumables of a job", "consumibles por trabajo"));
        var travel = Money("travelPerVisit", document.TravelPerVisit, Guess.TravelPerVisit, v => v.Say("travel for a visit", "desplazamiento por visita"));
        var overhead = Share("overhead", document.Overhead, Guess.Overhead, Ranges.Overhead, v => v.Say("overhead", "gastos generales"));
        var margin = Share("margin", document.Margin, Guess.Margin, Ranges.Loss, v => v.Say("margin", "margen"));
        var tax = document.Tax is { IsBlank: false } t ? Exact(fields.Share("tax", t, Ranges.Whole)) : NoTax(assumed);
        var least = document.MinimumCharge is { IsBlank: false } m ? fields.Money("minimumCharge", m, currency) : MoneyAmount.Zero(currency);
        var stages = ReadStages(fields, document.Stages, assumed);
        var calls = ReadCallBacks(fields, document.CallBacks ?? new CallBacksDocument(), currency);
        if (document.ValidDays is < 1 or > MostDays)
        {
            fields.Add("validDays", "DaysOutOfRange",
                v => v.Say($"A quote cannot hold {document.ValidDays} days.", $"Un presupuesto no puede valer {document.ValidDays} días."),
                v => v.Say($"Enter 1 to {MostDays} days.", $"Escriba de 1 a {MostDays} días."));
        }

        if (fields.Count > 0) return new RatesRead(null, fields.Faults);
        return new RatesRead(
            new Rates(
                givenBy, currency, wage, burden, waste, document.MaterialCharge ?? MaterialCharge.WholeKits, perCoat, perJob, travel, overhead, margin,
                tax, document.Taxed ?? Taxed.Everything, least, stages, document.ValidDays ?? Guess.ValidDays, calls, assumed),
            []);
    }

    private static string ReadGivenBy(Fields fields, string? entered, List<Phrase> assumed)
    {
        var givenBy = (entered ?? "").Trim();
        if (givenBy.Length == 0) assumed.Add(v => v.Say("who gives the quote: nobody is named on it", "quién da el presupuesto: no se nombra a nadie"));
        if (givenBy.Length > LongestGivenBy)
        {
            fields.Add("givenBy", "GivenByTooLong",
                v => v.Say($"{givenBy.Length} characters are more than the head of a paper holds.", $"{givenBy.Length} caracteres no caben en el encabezado de un papel."),
                v => v.Say($"Keep it to {LongestGivenBy}: business, address, telephone, licence.", $"Déjelo en {LongestGivenBy}: negocio, dirección, teléfono, licencia."));
        }

        return givenBy;
    }

    private static decimal NoTax(List<Phrase> assumed)
    {
        assumed.Add(v => v.Say("tax: none is added", "impuesto: no se añade ninguno"));
        return 0;
    }

    private static IReadOnlyList<Stage> ReadStages(Fields fields, IReadOnlyList<StageDocument>? stages, List<Phrase> assumed)
    {
        if (stages is not { Count: > 0 })
        {
            assumed.Add(v => v.Say("stages: 40 % with the order, 60 % at handover", "pagos: 40 % con el pedido, 60 % a la entrega"));
            return
            [
                new Stage(v => v.Say("deposit, with the order", "anticipo, con el pedido"), 0.4m),
                new Stage(v => v.Say("at handover", "a la entrega"), 0.6m),
            ];
        }

        var read = new List<Stage>();
        foreach (var (stage, path) in fields.Items("stages", stages, MostStages))
        {
            var name = fields.Name(path + ".name", stage.Name);
            read.Add(new Stage(_ => name, Exact(fields.Share(path + ".share", stage.Share, Ranges.StageShare))));
        }

        var sum = read.Sum(s => s.Share);
        if (sum != 1)
        {
            fields.Add("stages", "SharesNotWhole",
                v => v.Say($"The stages come to {v.Percent((double)sum, 2)} of the price.", $"Los pagos suman {v.Percent((double)sum, 2)} del precio."),
                v => v.Say("Make them come to 100 %.", "Haga que sumen 100 %."));
        }

        return read;
    }

    private static CallBacks ReadCallBacks(Fields fields, CallBacksDocument calls, Currency currency)
    {
        if (calls.Jobs < 0 || calls.CameBack < 0 || calls.CameBack > calls.Jobs)
        {
            fields.Add("callBacks", "CallBacksOutOfRange",
                v => v.Say($"{calls.CameBack} of {calls.Jobs} jobs cannot have come back.", $"No pueden haber vuelto {calls.CameBack} de {calls.Jobs} trabajos."),
                v => v.Say("Enter the jobs done, and how many of them came back.", "Escriba los trabajos hechos y cuántos de ellos volvieron."));
        }

        return new CallBacks(calls.Jobs, calls.CameBack, calls.CostEach is { IsBlank: false } each ? fields.Money("callBacks.costEach", each, currency) : null);
    }

    /// <summary>A share as written: eight decimals are more than anybody enters.</summary>
    private static decimal Exact(double share) => double.IsFinite(share) ? decimal.Round((decimal)share, 8) : 0;
}
