using static ShopDrawings.Dxf.GroupType;

namespace ShopDrawings.Dxf;

/// <summary>The entities written, group by group (DXF Reference, ENTITIES section).</summary>
internal static class EntityTypes
{
    /// <summary>A straight line.</summary>
    public static EntityType Line { get; } = new("LINE",
        new Subclass("AcDbLine", new Group(10, "start point", Point), new Group(11, "end point", Point)));

    /// <summary>A single place.</summary>
    public static EntityType Place { get; } = new("POINT",
        new Subclass("AcDbPoint", new Group(10, "location", Point)));

    /// <summary>A full circle.</summary>
    public static EntityType Circle { get; } = new("CIRCLE",
        new Subclass("AcDbCircle", new Group(10, "center point", Point), new Group(40, "radius", Length)));

    /// <summary>An arc, anticlockwise from its start angle.</summary>
    public static EntityType Arc { get; } = new("ARC",
        new Subclass("AcDbCircle", new Group(10, "center point", Point), new Group(40, "radius", Length)),
        new Subclass("AcDbArc", new Group(50, "start angle", Real), new Group(51, "end angle", Real)));

    /// <summary>A filled triangle, whose fourth corner is the third again. Readers draw the third and fourth corner crosswise.</summary>
    public static EntityType Solid { get; } = new("SOLID",
        new Subclass("AcDbTrace",
            new Group(10, "first corner", Point), new Group(11, "second corner", Point),
            new Group(12, "third corner", Point), new Group(13, "fourth corner", Point)));

    /// <summary>One line of text. With justification, both points are the alignment point.</summary>
    public static EntityType LineOfText { get; } = new("TEXT",
        new Subclass("AcDbText",
            new Group(10, "first alignment point", Point), new Group(40, "text height", Length), new Group(1, "the string itself", Text),
            new Group(50, "text rotation", Real) { Default = 0 }, new Group(7, "text style name", Name),
            new Group(72, "horizontal text justification type", Integer) { Default = 0 },
            new Group(11, "second alignment point", Point) { IsOptional = true }),
        new Subclass("AcDbText", new Group(73, "vertical text justification type", Integer) { Default = 0 }));

    /// <summary>An outline of lines and arcs, since R2000.</summary>
    public static EntityType LwPolyline { get; } = new("LWPOLYLINE",
        new Subclass("AcDbPolyline", new Group(90, "number of vertices", Integer), new Group(70, "polyline flag", Integer) { Default = 0 })
        {
            Repeated = [new Group(10, "vertex coordinates", PlanePoint), new Group(42, "bulge", Real) { Default = 0 }],
        });

    /// <summary>The outline of R12: its vertices follow as entities of their own, up to SEQEND.</summary>
    public static EntityType Polyline { get; } = new("POLYLINE",
        new Subclass("AcDb2dPolyline",
            new Group(66, "entities follow flag", Integer), new Group(10, "elevation point", Point), new Group(70, "polyline flag", Integer) { Default = 0 }));

    /// <summary>A vertex of a POLYLINE and the bulge of the arc that starts there.</summary>
    public static EntityType Vertex { get; } = new("VERTEX",
        new Subclass("AcDbVertex"),
        new Subclass("AcDb2dVertex", new Group(10, "location point", Point), new Group(42, "bulge", Real) { Default = 0 }));

    /// <summary>The end of a POLYLINE.</summary>
    public static EntityType SequenceEnd { get; } = new("SEQEND");
}
