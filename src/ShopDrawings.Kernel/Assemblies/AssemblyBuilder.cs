namespace ShopDrawings.Kernel;

/// <summary>Collects panels, joints and fittings and lets the latter write their holes.</summary>
internal sealed class AssemblyBuilder(string name)
{
    private readonly List<Panel> panels = [];
    private readonly List<Joint> joints = [];
    private readonly List<Fitting> fittings = [];

    /// <summary>The panel with an id as it stands, or nothing.</summary>
    public Panel? Find(string id) => panels.Find(p => p.Id == id);

    /// <summary>The ids of all panels, in building order.</summary>
    public IEnumerable<string> PanelIds => panels.Select(p => p.Id);

    /// <summary>Whether screws go through one panel into the other already.</summary>
    public bool HasJoint(string through, string receiving) => joints.Exists(j => j.Through == through && j.Receiving == receiving);

    /// <summary>Whether a face of one panel lies on an edge of the other.</summary>
    public bool CanScrew(string through, string receiving) => ScrewedButt.Touch(Find(through)!, Find(receiving)!);

    /// <summary>Adds a panel.</summary>
    /// <exception cref="ArgumentException">Its id is taken.</exception>
    public void Add(Panel panel)
    {
        if (Find(panel.Id) is not null) throw new ArgumentException($"Two panels are called “{panel.Id}”.", nameof(panel));
        panels.Add(panel);
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
        joints.Add(written.Joint);
        Write(through, written.Clearances);
        Write(receiving, written.Pilots);
        return true;
    }

    /// <summary>Fixes a piece of hardware to a panel.</summary>
    public void Fit(Fitting fitting)
    {
        fittings.Add(fitting);
        Write(fitting.Panel, fitting.Bores());
    }

    /// <summary>The finished assembly.</summary>
    public Assembly Build() => new(name, [.. panels], [.. joints], [.. fittings]);
}
