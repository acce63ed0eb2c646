using System.Collections.Immutable;
using Swapwright.Fitting;
using Swapwright.Knowledge;
using Swapwright.Worksheets.Belts;
using Swapwright.Worksheets.Effort;
using Swapwright.Worksheets.Hoses;
using Swapwright.Worksheets.Ledgers;
using Swapwright.Worksheets.Wiring;

namespace Swapwright.Sheets;

/// <summary>
/// How the numbers of any worksheet were got. Those that end in numbers say so themselves; what lies behind belts, wiring, hoses and effort is
/// only put together when somebody asks.
/// </summary>
public static class Workings
{
    public const string Belt = "belt";
    public const string Wiring = "wiring";
    public const string Hoses = "hoses";
    public const string Effort = "effort";

    /// <summary>Every worksheet that can be asked about, by the name that rules state its numbers under.</summary>
    public static readonly ImmutableArray<string> Ids = [Belt, Wiring, Hoses, .. LedgerAssembly.Ids, Effort];

    /// <summary>The worksheet that a word means: its id, or its name in the sheet where that differs.</summary>
    public static string IdOf(string word) => word == "belts" ? Belt : word;

    /// <summary>null where the combination has nothing of it.</summary>
    public static Ledger? Of(Sheet sheet, KnowledgeBase kb, string id) => id switch
    {
        Belt => Filled(Belts(sheet, kb)),
        Wiring => sheet.Wiring is { } wiring ? Filled(Wires(wiring)) : null,
        Hoses => sheet.Hoses is { } hoses ? Filled(Pipes(hoses, kb)) : null,
        Effort => Filled(Work(sheet, kb)),
        _ => sheet.Ledger(id),
    };

    private static Ledger? Filled(LedgerBuilder builder) => builder.Build() is { IsEmpty: false } ledger ? ledger : null;

    private static LedgerBuilder Belts(Sheet sheet, KnowledgeBase kb)
    {
        var (ledger, limits) = (new LedgerBuilder(Belt, "Belts"), BeltAssembly.Limits(kb));
        foreach (var belt in sheet.Belts)
        {
            BeltFigures.Add(ledger, belt.Loop, belt.Result, limits);
            foreach (var problem in belt.Result.Problems.Where(problem => problem.Weight == BeltProblemWeight.Blocking))
            {
                ledger.Gap(belt.Loop.Title, InSentence.Lower(BeltWords.Problem(belt, problem)).TrimEnd('.'), "Mend the drive's pulleys or its adjuster, or stock a belt that fits.");
            }
        }

        return ledger;
    }

    private static LedgerBuilder Wires(WiringSheet wiring)
    {
        var ledger = new LedgerBuilder(Wiring, "Wiring");
        WiringFigures.Add(ledger, wiring);
        foreach (var problem in wiring.Problems)
        {
            ledger.Gap(problem.Cavity is { } cavity ? $"{problem.Subject}, cavity {cavity}" : problem.Subject, problem.Message, "Mend the plug, the signal or the answer that it comes from.");
        }

        return ledger;
    }

    private static LedgerBuilder Pipes(HoseSheet hoses, KnowledgeBase kb)
    {
        var ledger = new LedgerBuilder(Hoses, "Hoses");
        HoseFigures.Add(ledger, hoses, HoseAssembly.LimitsOf(kb));
        return ledger;
    }

    private static LedgerBuilder Work(Sheet sheet, KnowledgeBase kb)
    {
        var (ledger, settings) = (new LedgerBuilder(Effort, "Effort"), kb.Settings);
        var prices = sheet.Shopping.Select(line => new PriceLine(line.Part.Id, line.Part.Title, line.Amount, SheetEffort.Estimate(line.Price ?? default)));
        EffortFigures.Add(ledger, sheet.Effort, prices, (double)settings.Effort.HoursADay, (double)settings.Effort.InCommon, settings.Currency);
        foreach (var problem in sheet.Effort.Problems)
        {
            ledger.Gap(problem.JobId ?? "A price", "its guesses are not three numbers in rising order", "Put least, likely and most in rising order.");
        }

        return ledger;
    }
}
