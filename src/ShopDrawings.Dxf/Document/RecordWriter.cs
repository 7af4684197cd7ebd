namespace ShopDrawings.Dxf;

/// <summary>Writes what tags have in common by release and unit: heads of records, markers, names, lengths.</summary>
internal sealed class RecordWriter(TagWriter tags, DxfRelease release, DrawingUnit unit, long firstHandle)
{
    /// <summary>The name of the only text style and of the only dimension style.</summary>
    public const string StandardName = "Standard";

    private readonly double millimetres = unit.Millimetres();
    private long nextHandle = firstHandle;

    /// <summary>Whether handles, owners, subclass markers and everything else younger than R12 are left out.</summary>
    public bool IsR12 { get; } = release == DxfRelease.R12;

    /// <summary>Whether text must be ASCII.</summary>
    public bool IsAscii { get; } = release != DxfRelease.R2010;

    /// <summary>The release written.</summary>
    public DxfRelease Release { get; } = release;

    /// <summary>The unit written.</summary>
    public DrawingUnit Unit { get; } = unit;

    /// <summary>The writer of plain tags.</summary>
    public TagWriter Tags { get; } = tags;

    /// <summary>A handle not used before: each call another.</summary>
    public long NextHandle => nextHandle++;

    /// <summary>Begins a record or entity: its name and, since R2000, handle, owner and first markers.</summary>
    public void Start(string name, long handle, long owner, params ReadOnlySpan<string> markers)
    {
        Tags.Text(0, name);
        if (IsR12) return;
        Tags.Handle(name == "DIMSTYLE" ? 105 : 5, handle);
        Tags.Handle(330, owner);
        foreach (var marker in markers) Tags.Text(100, marker);
    }

    /// <summary>Writes a subclass marker, which R12 has not.</summary>
    public void Marker(string marker)
    {
        if (!IsR12) Tags.Text(100, marker);
    }

    /// <summary>A symbol's name as the release spells it: R12 in capitals.</summary>
    public string Name(string name) => IsR12 ? name.ToUpperInvariant() : name;

    /// <summary>A length in mm in the file's unit.</summary>
    public double InUnits(double length) => length / millimetres;

    /// <summary>Writes a length given in mm.</summary>
    public void Length(int code, double length) => Tags.Real(code, length / millimetres);

    /// <summary>Writes a point of a plane, given in mm, without z.</summary>
    public void PlanePoint(int code, double x, double y)
    {
        Length(code, x);
        Length(code + 10, y);
    }

    /// <summary>Writes a point given in mm; z is 0.</summary>
    public void Point(int code, double x, double y)
    {
        PlanePoint(code, x, y);
        Tags.Real(code + 20, 0);
    }
}
