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

    /// <summary>An ellipse or a part of one, since R2000.</summary>
    public static EntityType Ellipse { get; } = new("ELLIPSE",
        new Subclass("AcDbEllipse",
            new Group(10, "center point", Point), new Group(11, "endpoint of major axis, relative to the center", Point),
            new Group(40, "ratio of minor axis to major axis", Fine), new Group(41, "start parameter", Fine), new Group(42, "end parameter", Fine)));

    /// <summary>A leader without a note of its own, since R2000. Path type 0 is straight; creation flag 3 says that there is no note.</summary>
    public static EntityType Leader { get; } = new("LEADER",
        new Subclass("AcDbLeader",
            new Group(3, "dimension style name", Name), new Group(71, "arrowhead flag", Integer), new Group(72, "leader path type", Integer),
            new Group(73, "leader creation flag", Integer), new Group(76, "number of vertices", Integer) { Each = [new Group(10, "vertex coordinates", Point)] }));

    /// <summary>
    /// A filled or hatched area, since R2000. Strict readers take its groups as a sequence. Boundary path type flag: 1 external, 2 polyline,
    /// 16 outermost; style 0 fills by odd parity; pattern type 0 is user-defined. Without a pattern, the groups of its lines are missing.
    /// </summary>
    public static EntityType Hatch { get; } = new("HATCH",
        new Subclass("AcDbHatch",
            new Group(10, "elevation point", Point), new Group(210, "x of extrusion direction", Real), new Group(220, "y of extrusion direction", Real),
            new Group(230, "z of extrusion direction", Real), new Group(2, "hatch pattern name", Text), new Group(70, "solid fill flag", Integer),
            new Group(71, "associativity flag", Integer),
            new Group(91, "number of boundary paths", Integer)
            {
                Each =
                [
                    new Group(92, "boundary path type flag", Integer), new Group(72, "has bulge flag", Integer), new Group(73, "is closed flag", Integer),
                    new Group(93, "number of polyline vertices", Integer) { Each = [new Group(10, "vertex location", PlanePoint), new Group(42, "bulge", Real)] },
                    new Group(97, "number of source boundary objects", Integer),
                ],
            },
            new Group(75, "hatch style", Integer), new Group(76, "hatch pattern type", Integer),
            new Group(52, "hatch pattern angle", Real) { IsOptional = true }, new Group(41, "hatch pattern spacing", Length) { IsOptional = true },
            new Group(77, "hatch pattern double flag", Integer) { IsOptional = true },
            new Group(78, "number of pattern definition lines", Integer)
            {
                IsOptional = true,
                Each =
                [
                    new Group(53, "pattern line angle", Real), new Group(43, "x of pattern line base point", Length), new Group(44, "y of pattern line base point", Length),
                    new Group(45, "x of pattern line offset", Length), new Group(46, "y of pattern line offset", Length), new Group(79, "number of dash length items", Integer),
                ],
            },
            new Group(98, "number of seed points", Integer)));

    /// <summary>A block placed in the drawing.</summary>
    public static EntityType Insert { get; } = new("INSERT",
        new Subclass("AcDbBlockReference",
            new Group(2, "block name", Name), new Group(10, "insertion point", Point), new Group(41, "x scale factor", Fine) { Default = 1 },
            new Group(42, "y scale factor", Fine) { Default = 1 }, new Group(43, "z scale factor", Fine) { Default = 1 },
            new Group(50, "rotation angle", Fine) { Default = 0 }));

    /// <summary>The distance between two points along a direction. The definition point is the foot of the second extension line.</summary>
    public static EntityType LinearDimension { get; } = Dimension(Length,
        new Subclass("AcDbAlignedDimension",
            new Group(13, "first definition point", Point), new Group(14, "second definition point", Point), new Group(50, "angle of rotated dimension", Real) { Default = 0 }),
        new Subclass("AcDbRotatedDimension"));

    /// <summary>The distance between two points. The definition point is the foot of the second extension line.</summary>
    public static EntityType AlignedDimension { get; } = Dimension(Length,
        new Subclass("AcDbAlignedDimension", new Group(13, "first definition point", Point), new Group(14, "second definition point", Point)));

    /// <summary>A radius. The definition point is the centre.</summary>
    public static EntityType RadiusDimension { get; } = Dimension(Length,
        new Subclass("AcDbRadialDimension", new Group(15, "point on the arc", Point), new Group(40, "leader length", Length)));

    /// <summary>A diameter. The definition point is the one across.</summary>
    public static EntityType DiameterDimension { get; } = Dimension(Length,
        new Subclass("AcDbDiametricDimension", new Group(15, "point on the circle", Point), new Group(40, "leader length", Length)));

    /// <summary>An angle by its vertex and two points, anticlockwise. The definition point is the middle of the dimension line's arc.</summary>
    public static EntityType AngularDimension { get; } = Dimension(Real,
        new Subclass("AcDb3PointAngularDimension",
            new Group(13, "point of the first side", Point), new Group(14, "point of the second side", Point), new Group(15, "vertex", Point)));

    /// <summary>A distance from an origin, the definition point, along one axis.</summary>
    public static EntityType OrdinateDimension { get; } = Dimension(Length,
        new Subclass("AcDbOrdinateDimension", new Group(13, "feature location", Point), new Group(14, "leader endpoint", Point)));

    /// <summary>A window of a layout on model space, since R2000. Lengths are those of the paper, but for view centre and height.</summary>
    public static EntityType Viewport { get; } = new("VIEWPORT",
        new Subclass("AcDbViewport",
            new Group(10, "center point", Point), new Group(40, "width in paper space", Length), new Group(41, "height in paper space", Length),
            new Group(68, "status", Integer), new Group(69, "id", Integer), new Group(12, "view center point", PlanePoint),
            new Group(13, "snap base point", PlanePoint), new Group(14, "snap spacing", PlanePoint), new Group(15, "grid spacing", PlanePoint),
            new Group(16, "x of view direction", Real), new Group(26, "y of view direction", Real), new Group(36, "z of view direction", Real),
            new Group(17, "view target point", Point), new Group(42, "lens length", Real), new Group(43, "front clip plane", Real),
            new Group(44, "back clip plane", Real), new Group(45, "view height in model space", Length), new Group(50, "snap angle", Real),
            new Group(51, "view twist angle", Real), new Group(72, "circle zoom percent", Integer), new Group(90, "status flags", Integer),
            new Group(1, "plot style sheet name", Text), new Group(281, "render mode", Integer), new Group(71, "UCS per viewport flag", Integer)));

    // Attachment point 5 is the middle. The measurement is in the file's unit, of an angle in radians (from memory).
    private static EntityType Dimension(GroupType measurement, params ReadOnlySpan<Subclass> own) => new("DIMENSION",
    [
        new Subclass("AcDbDimension",
            new Group(2, "name of the block that shows it", Name), new Group(10, "definition point", Point), new Group(11, "middle point of text", Point),
            new Group(70, "dimension type", Integer), new Group(71, "attachment point", Integer) { IsSinceR2000 = true },
            new Group(42, "actual measurement", measurement) { IsSinceR2000 = true }, new Group(1, "dimension text", Text),
            new Group(3, "dimension style name", Name)),
        .. own,
    ]);
}
