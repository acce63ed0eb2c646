using System.Collections.Immutable;
using Swapwright.Worksheets.Ledgers;
using static Swapwright.Worksheets.Load.LoadWorksheet;

namespace Swapwright.Worksheets.Load;

/// <summary>Whether clutch, gearbox and shafts carry the engine's torque, and whether they go together.</summary>
internal static class DrivelineFigures
{
    public static void Add(LedgerBuilder ledger, LoadInput input)
    {
        if (input is { Clutch: { } clutch } && input.Asks(LoadWorksheet.Clutch))
        {
            Clutch(ledger, input, clutch);
        }

        Gearbox(ledger, input);
        if (input.Asks(Shafts))
        {
            Shaft(ledger, input);
        }

        var joints = input.Joints.Where(joint => joint.Has.Length > 0 || joint.Wants.Length > 0).ToList();
        if (joints.Count > 0)
        {
            ledger.Add(new LedgerTable(
                "joints",
                "What has to go together",
                [new("joint", "Joint"), new("has", "It has"), new("wants", "It is to fit"), new("verdict", "Verdict")],
                [.. joints.Select(joint => (ImmutableArray<LedgerCell>)[LedgerCell.Words(joint.Title), LedgerCell.Words(joint.Has), LedgerCell.Words(joint.Wants), LedgerCell.Words(joint.Matches switch { true => "fits", false => "does not fit", _ => "not known" })])]));
        }
    }

    private static void Clutch(LedgerBuilder ledger, LoadInput input, ClutchInput clutch)
    {
        if (clutch is not { Clamp: { Si: > 0 } clamp, Outer: { Si: > 0 } outer, Inner: { Si: > 0 } inner, Friction: { Si: > 0 } friction } || (clutch.Faces?.Si ?? 2) < 1)
        {
            ledger.Gap("Clutch torque", "the clutch that is fitted does not state clamping force, face diameters and friction", "Give cover and plate these four.");
            return;
        }

        if (inner.Si >= outer.Si)
        {
            ledger.Gap("Clutch torque", "the inner diameter of the friction face is not smaller than the outer", "Measure the facings again.");
            return;
        }

        var faces = clutch.Faces?.Si ?? 2;
        var torque = LoadFormulas.ClutchTorque(faces, friction.Si, clamp.Si, outer.Si, inner.Si);
        ledger.Add(new Figure("clutch-torque", "The worn clutch carries", torque, "N m")
        {
            Decimals = 0,
            Formula = "T = n μ F (D + d) ∕ 4",
            Source = "uniform wear: Bhandari, Design of Machine Elements, chapter 11, as worked in the FOSSEE Scilab companion 764",
            From = [new FigureInput("friction faces", faces, "", clutch.Faces?.Input.Origin ?? "one plate, two faces"), friction.Input, clamp.Input, outer.Input, inner.Input],
            IsStep = input.Torque is { Si: > 0 },
        });
        if (input.Torque is not { Si: > 0 } engine)
        {
            ledger.Gap("Clutch margin", "the engine's torque is not known", "Give the donor its greatest torque.");
            return;
        }

        var margin = torque / engine.Si;
        ledger.Add(new Figure("clutch-margin", "Clutch, worn, to engine torque", margin, "")
        {
            Decimals = 2,
            Formula = "T_clutch ∕ T_engine",
            Source = "the margin wanted is common practice, no source",
            From = [new FigureInput("the worn clutch carries", torque, "N m", "load.clutch-torque"), engine.Input],
            Remark = $"carries {Number(torque)} N m against {Number(engine.Si)}: {(margin >= input.ClutchMargin ? "enough" : margin >= 1 ? $"less than the {Number(input.ClutchMargin, "0.0#")} wanted; it slips when hot" : "it slips")}",
            Weight = margin >= input.ClutchMargin ? FigureWeight.Good : margin >= 1 ? FigureWeight.Caution : FigureWeight.Bad,
        });
    }

    private static void Gearbox(LedgerBuilder ledger, LoadInput input)
    {
        if (input is { GearboxTorque: { Si: > 0 } rating, Torque: { Si: > 0 } torque })
        {
            var share = torque.Si / rating.Si * 100;
            ledger.Add(new Figure("gearbox-share", "Engine torque to the gearbox's rating", share, "%")
            {
                Decimals = 0,
                Formula = "T_engine ∕ T_rated",
                Source = "definition",
                From = [torque.Input, rating.Input],
                Remark = share > 100 ? "more than it is rated for" : share > 95 ? "at its rating: no rough starts" : "within its rating",
                Weight = share > 100 ? FigureWeight.Bad : share > 95 ? FigureWeight.Caution : FigureWeight.Good,
            });
        }
    }

    private static void Shaft(LedgerBuilder ledger, LoadInput input)
    {
        if (input is not { Torque: { Si: > 0 } torque, FirstGear: { Si: > 0 } first, FinalDrive: { Si: > 0 } final })
        {
            ledger.Gap("Torque on the drive shafts", "engine torque, first gear or final drive is not known", "Give the donor its torque and the gearbox its ratios.");
            return;
        }

        // An open differential halves the torque; a propeller shaft turns before the final drive multiplies it.
        var shaft = torque.Si * first.Si * (input.HasPropellerShaft ? 1 : final.Si / 2);
        var title = input.HasPropellerShaft ? "Propeller shaft in first gear" : "Each drive shaft in first gear";
        var gearbox = input.GearboxTorque is { } rating ? $"; the gearbox at its rating would put {Number(shaft * rating.Si / torque.Si)} on it" : "";
        ledger.Add(new Figure("shaft-torque", title, shaft, "N m")
        {
            Decimals = 0,
            Formula = input.HasPropellerShaft ? "T i_1" : "T i_1 i_f ∕ 2",
            Source = $"follows from the gearing; {(input.HasPropellerShaft ? "" : "an open differential halves it, ")}losses left out",
            From = [torque.Input, first.Input, .. input.HasPropellerShaft ? (FigureInput[])[] : [final.Input], .. input.ShaftTorque is { } stated ? (FigureInput[])[stated.Input] : []],
            Remark = input.ShaftTorque switch
            {
                null => $"no rating is stated for the shafts that are fitted{gearbox}",
                { Si: var most } when shaft > most => $"above the {Number(most)} N m that the shaft and its joints are rated for{gearbox}",
                { Si: var most } => $"within the {Number(most)} N m that the shaft and its joints are rated for{gearbox}",
            },
            Weight = input.ShaftTorque is { } limit ? shaft > limit.Si ? FigureWeight.Bad : FigureWeight.Good : FigureWeight.Plain,
        });
    }
}
