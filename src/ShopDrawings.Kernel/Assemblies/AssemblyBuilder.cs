namespace ShopDrawings.Kernel;

/// <summary>Collects panels, joints and fittings and lets the latter write their holes.</summary>
internal sealed class AssemblyBuilder(string name)
{
    private readonly List<Panel> panels = [];
    private readonly List<Joint> joints = [];
    private readonly List<PlacedHardware> hardware = [];

    /// <summary>The panel with an id as it stands, or nothing.</summary>
    public Panel? Find(string id) => panels.Find(p => p.Id == id);

    /// <summary>All panels as they stand, in building order.</summary>
    public IReadOnlyList<Panel> Panels => panels;

    /// <summary>Ids of the sheets that lie against an inside face.</summary>
    public List<string> Linings { get; } = [];

    /// <summary>The ids of all panels, in building order.</summary>
    public IEnumerable<string> PanelIds => panels.Select(p => p.Id);

    /// <summary>Whether screws go through one panel into the other already.</summary>
    public bool HasJoint(string through, string receiving) => joints.Exists(j => j.Through == through && j.Receiving == receiving);

    /// <summary>All hardware so far.</summary>
    public IReadOnlyList<PlacedHardware> Hardware => hardware;

    /// <summary>Whether a piece of hardware has an id.</summary>
    public bool HasHardware(string id) => hardware.Exists(h => h.Id == id);

    /// <summary>Whether a face of one panel lies on an edge of the other.</summary>
    public bool CanScrew(string through, string receiving) => ScrewedButt.Touch(Find(through)!, Find(receiving)!);

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

    /// <summary>Screws one panel's face to another's edge.</summary>
    /// <returns>Whether they touch that way.</returns>
    public bool Screw(string through, string receiving, Screw screw, RowRule rule)
    {
        if (ScrewedButt.Join(Find(through)!, Find(receiving)!, screw, rule) is not { } written) return false;
        Add(written);
        return true;
    }

    /// <summary>As <see cref="Screw"/>, for panels that touch by construction.</summary>
    public void MustScrew(string through, string receiving, Screw screw, RowRule rule)
    {
        if (!Screw(through, receiving, screw, rule)) throw new InvalidOperationException($"{through} does not touch {receiving}.");
    }

    /// <summary>Screws the face of one panel to the face of another, in two rows.</summary>
    public void ScrewFaces(string through, string receiving, Screw screw, RowRule rule) =>
        Add(ScrewedFaces.Join(Find(through)!, Find(receiving)!, screw, rule));

    private void Add(WrittenJoint written)
    {
        joints.Add(written.Joint);
        Write(written.Joint.Through, written.Clearances);
        Write(written.Joint.Receiving, written.Pilots);
    }

    /// <summary>Adds a piece of hardware; its holes are written apart.</summary>
    public void Add(PlacedHardware piece) => hardware.Add(piece);

    /// <summary>The finished assembly.</summary>
    public Assembly Build() => new(name, [.. panels], [.. joints], [.. hardware]);
}
