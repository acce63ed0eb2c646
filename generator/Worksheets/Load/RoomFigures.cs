using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Load.LoadWorksheet;

namespace Swapwright.Worksheets.Load;

/// <summary>Room above the engine and below its sump, from stated heights.</summary>
internal static class RoomFigures
{
    public static void Add(LedgerBuilder ledger, LoadInput input)
    {
        if (input.Asks(Bonnet))
        {
            AboveEngine(ledger, input);
        }

        // A base may say it of some layouts only: across the car the shafts decide where the engine sits.
        if (input.Asks(Bay) && input.BayLength is { } bay)
        {
            Along(ledger, input, bay);
        }

        if (input.Asks(LoadWorksheet.Ground))
        {
            Ground(ledger, input);
        }
    }

    private static void AboveEngine(LedgerBuilder ledger, LoadInput input)
    {
        if (input is not { BonnetSpace: { } space, EngineHeight: { } height })
        {
            ledger.Gap("Room above the engine", "the room or the height of the engine is not known", "Give the chassis its bonnet space and the donor its height above the crank axis.");
            return;
        }

        var room = space.Si + (input.BonnetRaise?.Si ?? 0) - height.Si;
        ledger.Add(new Figure("bonnet", "Room above the engine", room * 1000, "mm")
        {
            Decimals = 0,
            Formula = input.BonnetRaise is null ? "h_bonnet − h_engine" : "h_bonnet + h_raised − h_engine",
            Source = "stated heights above the crank axis",
            From = [space.Input, height.Input, .. input.BonnetRaise is { } raise ? (FigureInput[])[raise.Input] : []],
            Remark = room < 0 ? $"the engine stands {Number(-room * 1000)} mm too high: raise or relieve what is above it or change the manifold, never lower the engine" : "clears, with the room for the rolling engine already taken off",
            Weight = room < 0 ? FigureWeight.Caution : FigureWeight.Good,
        });
    }

    private static void Along(LedgerBuilder ledger, LoadInput input, Given bay)
    {
        if ((input.FanLength ?? input.BlockLength) is not { Si: > 0 } length)
        {
            ledger.Gap("Room along the bay", "the length of the engine is not known", "Give the donor its length from the crank nose to the rear face of the block, and from its fan where one turns on it.");
            return;
        }

        var room = bay.Si - length.Si;
        var what = input.FanLength is null ? "what is left before the crank pulley and behind the block together" : "with the fan on its hub; what is left for the shroud and for the engine's movement";
        ledger.Add(new Figure("bay", "Room along the bay", room * 1000, "mm")
        {
            Decimals = 0,
            Formula = input.FanLength is null ? "l_bay − l_block" : "l_bay − l_fan",
            Source = "stated lengths along the crank axis",
            From = [bay.Input, length.Input],
            Remark = room < 0 ? $"{Number(-room * 1000)} mm too long{(input.FanLength is null ? ": it does not go in" : " with the fan on its hub: take the fan off and blow from before the radiator")}" : what,
            Weight = room < 0 ? FigureWeight.Bad : FigureWeight.Good,
        });
    }

    private static void Ground(LedgerBuilder ledger, LoadInput input)
    {
        if (input is not { AxisHeight: { } axis, SumpDepth: { } sump })
        {
            ledger.Gap("Ground clearance below the sump", "the height of the crank axis or the depth of the sump is not known", "Give the chassis the height of its crank axis and the sump that is fitted its depth.");
            return;
        }

        var clear = axis.Si - sump.Si;
        var lowers = input.GroundClearance is { } asBuilt && clear < asBuilt.Si;
        ledger.Add(new Figure("ground", "Ground clearance below the sump", clear * 1000, "mm")
        {
            Decimals = 0,
            Formula = "h_axis − h_sump",
            Source = "stated heights at kerb mass; the springs' give under another mass left out",
            From = [axis.Input, sump.Input, .. input.GroundClearance is { } was ? (FigureInput[])[was.Input] : []],
            Remark = clear < input.LeastGround ? $"less than {Number(input.LeastGround * 1000)} mm: fit a guard or another sump"
                : lowers ? $"{Number((input.GroundClearance!.Si - clear) * 1000)} mm less than the car had"
                : input.GroundClearance is null ? "" : $"the car's own {Number(input.GroundClearance.Si * 1000)} mm stay",
            Weight = clear < input.LeastGround ? FigureWeight.Bad : lowers ? FigureWeight.Caution : FigureWeight.Good,
        });
    }
}
