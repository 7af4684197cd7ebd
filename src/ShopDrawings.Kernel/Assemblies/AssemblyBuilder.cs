namespace ShopDrawings.Kernel;

/// <summary>Collects panels, joints and fittings and lets the latter write their holes.</summary>
internal sealed class AssemblyBuilder(string name)
{
    private readonly List<Panel> panels = [];
    private readonly List<Joint> joints = [];
    private readonly List<PlacedHardware> hardware = [];
    private readonly List<Misfit> misfits = [];
    private readonly List<(string Through, string Receiving, JointRule Rule, bool IsFaces)> pending = [];

    /// <summary>The panel with an id as it stands, or nothing.</summary>
    public Panel? Find(string id) => panels.Find(p => p.Id == id);

    /// <summary>All panels as they stand, in building order.</summary>
    public IReadOnlyList<Panel> Panels => panels;

    /// <summary>Ids of the sheets that lie against an inside face.</summary>
    public List<string> Linings { get; } = [];

    /// <summary>What slides and swings.</summary>
    public List<Motion> Motions { get; } = [];

    /// <summary>The ids of all panels, in building order.</summary>
    public IEnumerable<string> PanelIds => panels.Select(p => p.Id);

    /// <summary>Whether one panel is joined to the other already.</summary>
    public bool HasJoint(string through, string receiving) => pending.Exists(j => j.Through == through && j.Receiving == receiving);

    /// <summary>All hardware so far.</summary>
    public IReadOnlyList<PlacedHardware> Hardware => hardware;

    /// <summary>Whether a piece of hardware has an id.</summary>
    public bool HasHardware(string id) => hardware.Exists(h => h.Id == id);

    /// <summary>Whether a face of one panel lies on an edge of the other.</summary>
    public bool CanJoin(string through, string receiving) => ButtContact.Of(Find(through)!, Find(receiving)!) is not null;

    /// <summary>Whether a face of one panel lies in the plane of a face of the other; false where there is no such panel.</summary>
    public bool CanJoinFaces(string through, string receiving) => (Find(through), Find(receiving)) is ({ } a, { } b) && JointWriter.FacesMeet(a, b);

    /// <summary>Milled off every edge before it is banded.</summary>
    public Size PreMill { get; init; } = Size.Zero;

    /// <summary>Adds a panel.</summary>
    /// <exception cref="ArgumentException">Its id is taken.</exception>
    public void Add(Panel panel)
    {
        if (Find(panel.Id) is not null) throw new ArgumentException($"Two panels are called “{panel.Id}”.", nameof(panel));
        panels.Add(panel.WithBands(panel.Bands.Select(b => b with { PreMilled = PreMill })));
    }

    /// <summary>Writes features into a panel.</summary>
    public void Write(string panelId, params IEnumerable<Feature> features)
    {
        var index = panels.FindIndex(p => p.Id == panelId);
        panels[index] = panels[index].WithFeatures(features);
    }

    /// <summary>Gives a panel another outline of the same length and width.</summary>
    public void Reshape(string panelId, Contour outline)
    {
        var index = panels.FindIndex(p => p.Id == panelId);
        panels[index] = panels[index].WithOutline(outline);
    }

    /// <summary>
    /// Joins one panel's face to another's edge. The fasteners are laid at the end, when all else is in its place; a housing's depth is part of
    /// the held panel's size by then.
    /// </summary>
    /// <returns>Whether they touch that way.</returns>
    public bool Join(string through, string receiving, JointRule rule)
    {
        if (ButtContact.Of(Find(through)!, Find(receiving)!, rule.Housing.Value) is null) return false;
        pending.Add((through, receiving, rule, false));
        return true;
    }

    /// <summary>As <see cref="Join"/>, for panels that touch by construction.</summary>
    public void MustJoin(string through, string receiving, JointRule rule)
    {
        if (!Join(through, receiving, rule)) throw new InvalidOperationException($"{through} does not touch {receiving}.");
    }

    /// <summary>Screws the face of one panel to the face of another, in two rows.</summary>
    public void JoinFaces(string through, string receiving, JointRule rule) => pending.Add((through, receiving, rule, true));

    /// <summary>Lays the fasteners of every joint, each clear of all that is drilled before it.</summary>
    public void Fasten()
    {
        for (var i = 0; i < panels.Count; i++) panels[i] = BothFaces.Shared(panels[i]);
        foreach (var (through, receiving, rule, isFaces) in pending)
        {
            var (a, b) = (Find(through)!, Find(receiving)!);
            var written = isFaces ? JointWriter.Faces(a, b, rule, panels) : JointWriter.Butt(a, b, rule)!;
            joints.Add(written.Joint);
            Write(through, written.OfThrough);
            Write(receiving, written.OfReceiving);
        }

        pending.Clear();
    }

    /// <summary>Adds a piece of hardware; its holes are written apart.</summary>
    public void Add(PlacedHardware piece) => hardware.Add(piece);

    /// <summary>Notes hardware that does not fit; it is left out or stands as well as it can.</summary>
    public void Misfit(string[] panels, string message, NamedNumber[] numbers, string cure, string source) =>
        misfits.Add(new Misfit([.. panels], message, [.. numbers], cure, source));

    /// <summary>The finished assembly, each bore made as the shop does it.</summary>
    public Assembly Build(DrillingHabit drilling) => new(name, drilling.Decide(panels, joints), [.. joints], [.. hardware], [.. Motions], [.. misfits]);
}
