using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>Whether panels lie on a sheet so that a machine can cut them out. Arcs are judged to 0.01 mm.</summary>
internal static class SheetFits
{
    private const string Rule = "sheet-fits";
    private const double ArcTolerance = 0.01;

    /// <summary>Whether all panels can be cut; what is wrong is added to the remarks.</summary>
    public static bool IsSound(CutSheet sheet, Machine machine, MachiningRemarks remarks, LengthStyle lengths)
    {
        var isSound = true;
        var tool = new ToolChoice(machine);
        var between = machine.Kind == MachineKind.Drawing ? 0 : sheet.Panels.Select(p => tool.ForEdge(p.Outline, isOutside: true, p.Panel.Thickness.Value)).Where(t => t.IsKnown).Select(t => t.Diameter).DefaultIfEmpty(0).Max();
        if (machine.Bed is { } bed && (Tolerance.Exceeds(sheet.Length.Value, bed.X) || Tolerance.Exceeds(sheet.Width.Value, bed.Y)))
            remarks.Add("", new(Rule, Severity.Warning, $"sheet {sheet.Id} is {lengths.Describe(sheet.Length.Value)} × {lengths.Describe(sheet.Width.Value)}, and the bed {lengths.Describe(bed.X)} × {lengths.Describe(bed.Y)}", [new("bed x", bed.X, "mm"), new("bed y", bed.Y, "mm")], "derived (geometry)", "cut the sheet into pieces that fit, or use another machine"));
        var regions = sheet.Panels.Select(p => PolygonOperations.RegionOf(p.Outline, ArcTolerance)).ToList();
        for (var i = 0; i < sheet.Panels.Length; i++)
        {
            var (panel, box) = (sheet.Panels[i].Panel, sheet.Panels[i].Outline.Bounds);
            var beyond = Math.Max(Math.Max(-box.Min.X, -box.Min.Y), Math.Max(box.Max.X - sheet.Length.Value, box.Max.Y - sheet.Width.Value));
            if (beyond > Tolerance.Length)
                Fail($"{panel.Id} lies {lengths.Describe(beyond)} beyond the edge of sheet {sheet.Id}", [new("beyond", beyond, "mm")], $"move it inwards; where it lies it covers {lengths.Describe(box.Width)} × {lengths.Describe(box.Height)}, and the sheet is {lengths.Describe(sheet.Length.Value)} × {lengths.Describe(sheet.Width.Value)}");
            else if (machine.Kind != MachineKind.Drawing && -beyond > Tolerance.Length && -beyond < between)
                remarks.Add("", new(Rule, Severity.Warning, $"{panel.Id} lies {lengths.Describe(-beyond)} from the edge of sheet {sheet.Id}, and the cut there is {lengths.Describe(between)} wide", [new("from the edge", -beyond, "mm"), new("cut", between, "mm")], "derived (geometry)", "leave a rim wider than the cut, or let the panel begin at the edge"));
            for (var j = i + 1; j < sheet.Panels.Length; j++)
            {
                var other = sheet.Panels[j].Panel;
                if (regions[i].And(regions[j]).Area > Tolerance.Length)
                    Fail(LiesInOpening(sheet.Panels[i], regions[j]) || LiesInOpening(sheet.Panels[j], regions[i])
                        ? $"{panel.Id} and {other.Id} lie one in an opening of the other on sheet {sheet.Id}, and the waste of openings falls out before outlines are cut"
                        : $"{panel.Id} and {other.Id} lie on each other on sheet {sheet.Id}", [], "move one of them");
                else if (regions[i].DistanceTo(regions[j]) is var apart && apart < between - ArcTolerance)
                    Fail($"{panel.Id} and {other.Id} lie {lengths.Describe(apart)} apart on sheet {sheet.Id}, and the cut between them is {lengths.Describe(between)} wide", [new("apart", apart, "mm"), new("cut", between, "mm")], $"leave {lengths.Describe(between)} or more between them");
            }

            if (panel.Board.HasGrain && sheet.Panels[i].Lie.QuarterTurns % 2 == 1 != sheet.HasGrainAcross)
                remarks.Add("", new(Rule, Severity.Warning, $"the grain of {panel.Id} runs across it as it lies on sheet {sheet.Id}", [], "derived (geometry)", "turn it by 0 or 180 degrees"));
            var hidden = panel.Features.Count(f => FacePlanner.IsBlindIn(f, sheet.Panels[i].Lie.Up.Opposite(), machine));
            if (hidden > 0 && machine.SecondFace == SecondFace.None)
                remarks.Add("", new(Rule, Severity.Warning, $"{panel.Id} lies on sheet {sheet.Id} with {(hidden == 1 ? "a feature" : FormattableString.Invariant($"{hidden} features"))} in the face below, and nothing is turned over", [], "derived (geometry)", "make them by hand, turn the panel, or give the machine “second-face: turned-over”"));
        }

        return isSound;

        static bool LiesInOpening(LyingPanel holder, PolygonOperations.Region guest) =>
            holder.Panel.Features.OfType<CutOut>().Any(c => guest.Minus(PolygonOperations.RegionOf(holder.Lie.Of(c.Outline), ArcTolerance)).Area < Tolerance.Length);

        void Fail(string message, ImmutableArray<NamedNumber> numbers, string cure)
        {
            isSound = false;
            remarks.Add("", new(Rule, Severity.Error, message, numbers, "derived (geometry)", cure));
        }
    }
}
