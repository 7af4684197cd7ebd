namespace ShopDrawings.Kernel;

/// <summary>Finds screws that do not suit the boards they join, and hardware that stands where something else is or found no room.</summary>
internal sealed class HardwareFits() : Check("hardware-fits", "Every screw holds in its board, hardware has the room it needs, and no slide is overloaded.", Hold, FaceHold, Wall)
{
    /// <summary>Least grip of a screw.</summary>
    internal static readonly CheckLimit Hold = new("hardware-fits", "hold", 25, "Least length of a screw inside the edge it holds in. 25 mm (1 in): common practice, no source.");

    /// <summary>Least grip of a screw in a face.</summary>
    internal static readonly CheckLimit FaceHold = new("hardware-fits", "face-hold", 12, "Least length of a screw inside the face it holds in. 12 mm (1/2 in): common practice, no source.");

    /// <summary>Least wall beside a bore in an edge.</summary>
    internal static readonly CheckLimit Wall = new("hardware-fits", "wall", JointWriter.LeastWall, "Least material on either side of a bore in an edge. 4 mm (5/32 in): common practice, no source.");

    private const string Practice = "common practice, no source";

    /// <inheritdoc/>
    public override IEnumerable<Finding> Run(Assembly assembly, CheckSettings settings, LengthStyle lengths) =>
        assembly.Misfits.Select(m => OfMisfit(assembly, m))
            .Concat(assembly.Joints.SelectMany(j => Joint(assembly, lengths, j, settings.Limit(j.Held.IsFace() ? FaceHold : Hold).Value, settings.Limit(Wall).Value)))
            .Concat(assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge).Select(h => Hinge(h, lengths)).OfType<Finding>())
            .Concat(SwingGaps(assembly, lengths))
            .Concat(assembly.Motions.OfType<Travel>().Select(m => Slides(assembly, m)).OfType<Finding>())
            .Concat(assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge).GroupBy(h => h.Mounts[1].Panel).SelectMany(g => OfDoor(assembly.Panel(g.Key), [.. g], lengths)))
            .Concat(Volumes(assembly, lengths))
            .Concat(Movement(assembly, lengths));

    private Finding OfMisfit(Assembly assembly, Misfit misfit) => new(
        Rule, Severity.Error, [.. assembly.Panels.Select(p => p.Id).Where(misfit.Panels.Contains)], misfit.Message, misfit.Numbers, misfit.Source, misfit.Cure,
        new Indicator(misfit.Panels[0], assembly.Panel(misfit.Panels[0]).Box));

    private IEnumerable<Finding> Joint(Assembly assembly, LengthStyle lengths, Joint joint, double hold, double wall)
    {
        var (through, receiving) = (assembly.Panel(joint.Through), assembly.Panel(joint.Receiving));
        foreach (var fastener in joint.Fasteners.Select(f => f.Fastener).Distinct())
        {
            var remaining = through.Thickness - (joint.Housing ?? Size.Zero);
            var grip = fastener.Reach(remaining, receiving.Thickness).IntoHeld.Value;
            var length = fastener switch { Screw s => s.Length.Value, ConnectorScrew c => c.Length.Value, _ => double.NaN };
            if (fastener.IsDriven && Tolerance.Exceeds(hold, grip))
                yield return Make(joint, $"{joint.Id}: screws {lengths.Describe(length)} long reach {lengths.Describe(Math.Max(grip, 0))} into {receiving.Id}; they need {lengths.Describe(hold)}",
                    [new("screw length", length, "mm"), new("grip", grip, "mm"), new("least grip", hold, "mm")],
                    $"take screws at least {lengths.Describe(length - grip + hold)} long", through);
            if (joint.Held.IsFace())
            {
                var most = receiving.Thickness.Value - BoreInPanel.Floor.Default;
                if (Tolerance.Exceeds(grip, most))
                    yield return Make(joint, $"{joint.Id}: a screw {lengths.Describe(length)} long comes through {receiving.Id}, or nearly: the two boards are {lengths.Describe(through.Thickness.Value + receiving.Thickness.Value)}",
                        [new("screw length", length, "mm"), new("boards", through.Thickness.Value + receiving.Thickness.Value, "mm")],
                        hold <= most ? $"take screws of {lengths.Describe(length - grip + hold)} to {lengths.Describe(length - grip + most)}" : $"{receiving.Id} is too thin for screws; glue {through.Id} to it, and leave the screws out", receiving);
                continue;
            }

            if (fastener.Bores(remaining, receiving.Thickness).Where(b => b.Site == Site.Held).MaxBy(b => b.Diameter.Value) is not { } inEdge) continue;
            var beside = (receiving.Thickness.Value - inEdge.Diameter.Value) / 2;
            if (Tolerance.Exceeds(wall, beside))
                yield return Make(joint, $"{joint.Id}: a {lengths.Describe(inEdge.Diameter.Value)} {(inEdge.Use == BoreUse.Pilot ? "pilot" : $"bore for {fastener.Name}")} in the edge of {receiving.Id} leaves {lengths.Describe(Math.Max(beside, 0))} on either side; {lengths.Describe(wall)} must stay",
                    [new("board thickness", receiving.Thickness.Value, "mm"), new("wall", beside, "mm"), new("least wall", wall, "mm")],
                    $"use a board at least {lengths.Describe(inEdge.Diameter.Value + 2 * wall)} thick, a thinner {(fastener.IsDriven ? "screw" : "fastener")}, or hold {receiving.Id} in a groove", receiving);
        }
    }

    private IEnumerable<Finding> Volumes(Assembly assembly, LengthStyle lengths)
    {
        var bodies = assembly.Hardware.SelectMany(h => h.Volumes.Select(v => (Fitting: h, Panel: assembly.Panel(h.Mounts[0].Panel), Box: v))).ToList();
        var placed = assembly.Panels.Where(p => p.Placement is not null).Select(p => (Panel: p, Bounds: p.Placement!.ToAssembly(p.Box))).ToList();
        foreach (var (fitting, panel, box) in bodies)
        {
            var corners = new[] { new Point2(box.Min.X, box.Min.Y), new(box.Max.X, box.Min.Y), new(box.Max.X, box.Max.Y), new(box.Min.X, box.Max.Y) };
            if (fitting.Kind == HardwareKind.Fitting && !corners.All(panel.Outline.Contains))
                yield return Make(fitting, box, [panel.Id],
                    $"{fitting.Id} is {lengths.Describe(box.Size.X)} × {lengths.Describe(box.Size.Y)} and stands over the edge of {panel.Id}, whose face is {lengths.Describe(panel.Length.Value)} × {lengths.Describe(panel.Width.Value)}",
                    "move it inwards, or turn it");
            if (panel.Placement is null) continue;

            var block = panel.Placement.ToAssembly(box);
            foreach (var (other, bounds) in placed)
                if (block.Intersection(bounds) is not null && other != panel && !Holds(fitting, other) && Solid.Block(panel, box).Overlap(Solid.Of(other)) is { } shared)
                    yield return Make(fitting, box, [panel.Id, other.Id],
                        $"{fitting.Id} on {panel.Id} stands {lengths.Describe(shared.Size.X)} × {lengths.Describe(shared.Size.Y)} × {lengths.Describe(shared.Size.Z)} deep in {other.Id}",
                        fitting.Kind == HardwareKind.Hinge ? ClearOfHinges(assembly, fitting, other, lengths) : $"move it away from {other.Id}, or cut an opening for it");
        }

        var blocks = bodies.Where(b => b.Panel.Placement is not null).Select(b => (b.Fitting, b.Panel, b.Box, Bounds: b.Panel.Placement!.ToAssembly(b.Box))).ToList();
        for (var i = 0; i < blocks.Count; i++)
            for (var j = i + 1; j < blocks.Count; j++)
            {
                var (a, b) = (blocks[i], blocks[j]);
                if (a.Bounds.Intersection(b.Bounds) is null || a.Fitting == b.Fitting) continue;
                yield return Make(a.Fitting, a.Box, a.Panel == b.Panel ? [a.Panel.Id] : [a.Panel.Id, b.Panel.Id],
                    $"{a.Fitting.Id} on {a.Panel.Id} and {b.Fitting.Id} on {b.Panel.Id} take the same space", "move one of them");
            }
    }

    // Where what lies in the way of a door's hinges could lie instead: the nearest heights of its upper face clear of them all.
    private static string ClearOfHinges(Assembly assembly, PlacedHardware hinge, Panel lying, LengthStyle lengths)
    {
        const double Clearance = 3;
        if (lying.Placement!.Inwards.Axis() != 2) return $"move {lying.Id} away from the hinge, or hang the door elsewhere";
        var thickness = lying.Thickness.Value;
        var top = lying.Extent(2).To.Value;
        var taken = assembly.Hardware.Where(h => h.Kind == HardwareKind.Hinge && h.Mounts[1].Panel == hinge.Mounts[1].Panel)
            .SelectMany(h => h.Volumes.Select(v => assembly.Panel(h.Mounts[0].Panel).Placement!.ToAssembly(v)))
            .Select(b => (From: b.Min.Z - Clearance, To: b.Max.Z + Clearance + thickness)).OrderBy(b => b.From).ToList();
        var (low, high) = (top, top);
        foreach (var block in taken.AsEnumerable().Reverse())
            if (low > block.From && low < block.To) low = block.From;
        foreach (var block in taken)
            if (high > block.From && high < block.To) high = block.To;
        return lying.Id == "bottom"
            ? $"make the recess at most {lengths.Describe(low - thickness)}, or at least {lengths.Describe(high - thickness)}"
            : $"set the upper face of {lying.Id} at most {lengths.Describe(low)} or at least {lengths.Describe(high)} above the lower edge of the cabinet";
    }

    // What slides must pass every panel and every piece of hardware that does not move with it, and so must the hardware on it.
    private IEnumerable<Finding> Movement(Assembly assembly, LengthStyle lengths)
    {
        // Doors are open when something slides out between them.
        var doors = assembly.Motions.OfType<Swing>().SelectMany(s => s.Panels).ToHashSet();
        foreach (var motion in assembly.Motions.OfType<Travel>())
        {
            var carried = assembly.Hardware.Where(h => h.Mounts.All(m => motion.Panels.Contains(m.Panel)));
            var swept = motion.Panels.Select(assembly.Panel).Select(p => (Name: motion.Id, Panel: p.Id, Box: motion.Swept(p.Placement!.ToAssembly(p.Box))))
                .Concat(carried.SelectMany(h => h.Volumes.Select(v => (Name: $"{motion.Id} with {h.Id}", Panel: h.Mounts[0].Panel, Box: motion.Swept(InAssembly(assembly, h, v)))))).ToList();
            Finding? Blocked(string what, Panel owner, Box3 inOwner, bool isPanel)
            {
                var box = owner.Placement!.ToAssembly(inOwner);
                if (swept.Find(s => s.Box.Intersection(box) is not null) is not { Name: { } name } mover) return null;
                var met = mover.Box.Intersection(box)!.Value;
                string[] panels = isPanel ? [owner.Id, mover.Panel] : [owner.Id];
                return new(Rule, Severity.Error, [.. assembly.Panels.Select(p => p.Id).Where(panels.Contains)],
                    $"{name} meets {what} on its way out, by {lengths.Describe(met.Size.X)} × {lengths.Describe(met.Size.Y)} × {lengths.Describe(met.Size.Z)}",
                    [new("length", met.Size.X, "mm"), new("width", met.Size.Y, "mm"), new("height", met.Size.Z, "mm")], "derived (geometry)",
                    isPanel ? $"move {what} out of its way, or what slides" : $"move {what} up or down, or what slides", new(owner.Id, inOwner));
            }

            foreach (var piece in assembly.Hardware.Where(h => !h.Mounts.Any(m => motion.Panels.Contains(m.Panel)) && !h.Mounts.All(m => doors.Contains(m.Panel)) && assembly.Panel(h.Mounts[0].Panel).Placement is not null))
                foreach (var volume in piece.Volumes)
                    if (Blocked(piece.Id, assembly.Panel(piece.Mounts[0].Panel), volume, isPanel: false) is { } finding) yield return finding;

            foreach (var panel in assembly.Panels.Where(p => p.Placement is not null && !motion.Panels.Contains(p.Id) && !doors.Contains(p.Id)))
                if (Blocked(panel.Id, panel, panel.Box, isPanel: true) is { } finding) yield return finding;
        }
    }

    private static Box3 InAssembly(Assembly assembly, PlacedHardware piece, Box3 volume) => assembly.Panel(piece.Mounts[0].Panel).Placement!.ToAssembly(volume);

    // Plates are made from 0 to about 9 mm high (common practice, no source).
    private Finding? Hinge(PlacedHardware hinge, LengthStyle lengths)
    {
        const double Highest = 9;
        if (hinge.Size("plate-height") is not { Value: var plate } || (plate >= -Tolerance.Length && plate <= Highest + Tolerance.Length)) return null;
        var (what, size) = hinge.Size("overlay") is { } overlay ? ("an overlay", overlay.Value) : ("a gap", hinge.Size("door-gap")!.Value);
        return new Finding(
            Rule, Severity.Error, [.. hinge.Mounts.Select(m => m.Panel)],
            $"{hinge.Id}: {what} of {lengths.Describe(size)} needs a mounting plate {lengths.Describe(plate)} high; plates are 0 to {lengths.Describe(Highest)} high",
            [new(what[(what.IndexOf(' ') + 1)..], size, "mm"), new("plate height", plate, "mm")], Practice,
            "change the reveal, the gap, the boring distance, or take another hinge", new Indicator(hinge.Mounts[0].Panel, hinge.Volumes[0]));
    }

    // Mass decides the number of hinges, height gives a note only.
    private IEnumerable<Finding> Count(Panel door, PlacedHardware[] hinges, LengthStyle lengths)
    {
        var height = door.Placement!.ToAssembly(door.Box).Size.Z;
        var (byMass, byHeight) = (HingeGeometry.ByMass(door.MassKg), HingeGeometry.ByHeight(height));
        if (hinges.Length >= Math.Max(byMass, byHeight)) yield break;
        var isLight = hinges.Length >= byMass;
        yield return new Finding(
            Rule, isLight ? Severity.Note : Severity.Warning, [door.Id],
            FormattableString.Invariant($"{door.Id}: {hinges.Length} {(hinges.Length == 1 ? "hinge carries" : "hinges carry")} its {door.MassKg:0.#} kg{(isLight ? "" : $", which ask for {byMass}")}{(byHeight > hinges.Length ? $"; at {lengths.Describe(height)} of height makers' charts show {byHeight}, which keep it flat" : "")}"),
            [new("hinges", hinges.Length, ""), new("by mass", byMass, ""), new("by height", byHeight, "")], "typical of several makers' charts, from memory",
            "give the doors more “hinges”", null);
    }

    private IEnumerable<Finding> OfDoor(Panel door, PlacedHardware[] hinges, LengthStyle lengths) =>
        Spread(door, hinges, lengths) is { } spread ? Count(door, hinges, lengths).Prepend(spread) : Count(door, hinges, lengths);

    // The outer hinges of a door are further apart than the door is wide (note on a maker's chart), or than half its height where it is low.
    private Finding? Spread(Panel door, PlacedHardware[] hinges, LengthStyle lengths)
    {
        double Height(PlacedHardware hinge) => door.Placement!.ToAssembly(door.OnSurface(Surface.Inside, hinge.Mounts[1].At.Point)).Z;
        var size = door.Placement!.ToAssembly(door.Box).Size;
        var (apart, least) = (hinges.Max(Height) - hinges.Min(Height), Math.Min(size.X, size.Z / 2));
        return apart >= least - Tolerance.Length ? null : new Finding(
            Rule, Severity.Error, [door.Id],
            $"{door.Id}: its outer hinges stand only {lengths.Describe(apart)} apart on a door {lengths.Describe(size.X)} wide and {lengths.Describe(size.Z)} high; {lengths.Describe(least)} is the least",
            [new("apart", apart, "mm"), new("least", least, "mm")], "note on a hinge maker's chart; half the height: common practice, no source",
            "move shelves and slides away from the ends of the door, or take more cups", new Indicator(door.Id, door.Box));
    }

    // What moves, with the load on it. A pair is judged once.
    private Finding? Slides(Assembly assembly, Travel motion)
    {
        var slide = assembly.Hardware.FirstOrDefault(h => h.Kind == HardwareKind.Slide && h.Mounts.Any(m => motion.Panels.Contains(m.Panel)));
        if (slide?.Size("load") is not { } load || slide.Size("slide-rating") is not { } rating) return null;
        var own = motion.Panels.Sum(p => assembly.Panel(p).MassKg);
        var use = SlideGeometry.Utilisation(load.Value + own, rating.Value);
        return use <= SlideGeometry.MostUse + 1e-9 ? null : new Finding(
            Rule, Severity.Error, [.. assembly.Panels.Select(p => p.Id).Where(motion.Panels.Contains)],
            FormattableString.Invariant($"{motion.Id}: {load.Value:0.##} kg and its own {own:0.##} kg, moved with a factor of {SlideGeometry.DynamicFactor:0.##}, use {use:0.00} of the {rating.Value:0.##} kg a pair carries; {SlideGeometry.MostUse:0.##} is the most"),
            [new("load", load.Value, "kg"), new("own mass", own, "kg"), new("rating of the pair", rating.Value, "kg"), new("use", use, "")], Practice,
            "take stronger slides or load it less; follow the maker's instructions for the fixings", new Indicator(slide.Mounts[0].Panel, slide.Volumes[0]));
    }

    // A door between the panels that turns about its back corner.
    private IEnumerable<Finding> SwingGaps(Assembly assembly, LengthStyle lengths)
    {
        foreach (var (door, hinge) in assembly.Hardware.Where(h => h.Size("door-gap") is not null).GroupBy(h => h.Mounts[1].Panel).Select(g => (assembly.Panel(g.Key), g.First())))
        {
            var least = HingeGeometry.SwingGap(door.Placement!.ToAssembly(door.Box).Size.X, door.Thickness.Value);
            var gap = hinge.Size("door-gap")!.Value;
            if (gap < least - Tolerance.Length)
                yield return new Finding(
                    Rule, Severity.Error, [door.Id], $"{door.Id}: its back corner needs a gap of {lengths.Describe(least)} to turn out between the panels; it has {lengths.Describe(gap)}",
                    [new("gap", gap, "mm"), new("least", least, "mm")], "derived (geometry)", $"make the gap of the doors at least {lengths.Describe(least)}", new Indicator(door.Id, door.Box));
        }
    }

    // A hinge's arm reaches into its own door.
    private static bool Holds(PlacedHardware piece, Panel panel) => piece.Mounts.Any(m => m.Panel == panel.Id);

    private Finding Make(Joint joint, string message, NamedNumber[] numbers, string cure, Panel shownOn)
    {
        var tips = joint.Fasteners.SelectMany(f => new[] { f.Head, f.Tip }).Select(p => shownOn.Placement!.ToPanel(p)).ToList();
        return new Finding(Rule, Severity.Error, [joint.Through, joint.Receiving], message, [.. numbers], Practice, cure,
            new Indicator(shownOn.Id, new Box3(tips.Aggregate(Point3.Min), tips.Aggregate(Point3.Max))));
    }

    private Finding Make(PlacedHardware fitting, Box3 box, string[] panels, string message, string cure) =>
        new(Rule, Severity.Error, [.. panels], message, [new("length", box.Size.X, "mm"), new("width", box.Size.Y, "mm"), new("height", box.Size.Z, "mm")],
            "derived (geometry)", cure, new Indicator(fitting.Mounts[0].Panel, box));
}
