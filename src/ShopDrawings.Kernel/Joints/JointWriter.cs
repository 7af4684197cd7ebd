using System.Collections.Immutable;

namespace ShopDrawings.Kernel;

/// <summary>What a joint adds to the assembly: itself, and what both panels get for it.</summary>
internal sealed record WrittenJoint(Joint Joint, ImmutableArray<Feature> OfThrough, ImmutableArray<Feature> OfReceiving);

/// <summary>
/// Lays the fasteners of a joint along the stretch where two placed panels meet, each clear of what is drilled or cut already, and writes the
/// bores of both panels. Every bore of a fastener comes from one point of the assembly carried through both placements.
/// </summary>
internal sealed class JointWriter
{
    /// <summary>Material in mm that must stay on either side of a bore in an edge: 4 mm (5/32 in), common practice, no source.</summary>
    public const double LeastWall = 4;

    // From a screw through a face to the panel's edge, in mm: 1.5 of its diameter beside its head (common practice, no source).
    private const double LeastFromEdge = 10;

    // From a cam connector to the dowel beside it: one step of the 32 mm grid (common practice, no source).
    private static readonly Size BesideDistance = Size.Default(32, "beside-distance");

    private readonly Panel through;
    private readonly Panel receiving;
    private readonly JointRule rule;
    private readonly Surface entry;
    private readonly Surface held;
    private readonly Surface besideFace;
    private readonly int normal;
    private readonly string id;
    private readonly Clearing ofThrough;
    private readonly Clearing ofReceiving;
    private readonly List<(string Id, Box3 Box)> around = [];
    private readonly List<PlacedFastener> fasteners = [];
    private readonly List<Feature> throughFeatures = [];
    private readonly List<Feature> receivingFeatures = [];

    private JointWriter(Panel through, Surface face, Panel receiving, Surface held, JointRule rule)
    {
        (this.through, this.receiving, this.rule, this.held) = (through, receiving, rule, held);
        entry = face.Opposite();
        normal = through.Facing(face).Axis();
        // Out of sight: the lower face of a shelf or bottom, the inside of what stands. A bracket sits where the panel with the face reaches.
        besideFace = rule.Face ?? (receiving.Facing(Surface.Outside) == Direction.Bottom ? Surface.Outside : Surface.Inside);
        if (rule.Face is null && rule.Fastener is CornerBracket bracket && !Reaches(besideFace, bracket.Leg)) besideFace = besideFace.Opposite();
        id = $"{through.Id}/{receiving.Id}";
        (ofThrough, ofReceiving) = (new Clearing(through), new Clearing(receiving));
    }

    /// <summary>
    /// Joins the face of one panel to the edge of another that lies against it, or in a housing in it. The row stands on the middle of the
    /// held panel's thickness; its ends are measured from the ends of the stretch where the two touch.
    /// </summary>
    /// <returns>Nothing where no face of the first lies on a straight edge of the second.</returns>
    public static WrittenJoint? Butt(Panel through, Panel receiving, JointRule rule)
    {
        if (ButtContact.Of(through, receiving, rule.Housing.Value) is not { } contact) return null;
        var writer = new JointWriter(through, contact.Face, receiving, contact.Edge, rule);
        var middle = (receiving.Thickness / 2).As("middle-of-thickness");
        var across = receiving.Placement!.Inwards.Axis();
        var along = ButtContact.AxisOf(receiving, contact.Edge);
        writer.House(contact, along, across);
        var row = rule.Fastener is null ? null : rule.Row.On(contact.Length);
        SizePoint Point(Size place) => At(along, receiving.ToAssembly(along, contact.From + place), across, receiving.ToAssembly(across, middle));
        Position OnHeld(Size place) => new(contact.From + place, middle);
        if (row is not null) writer.Lay(row, contact.Length, Point, OnHeld);
        return writer.Written(row);
    }

    /// <summary>
    /// Screws pass through a placed panel into the face of another that lies on it, in rows along the longer side of the rectangle where both
    /// lie on each other, each as far from its long edges as a row across would begin, and beside panels that stand where a head would be.
    /// </summary>
    /// <param name="through">The panel screws pass through.</param>
    /// <param name="receiving">The panel they hold in.</param>
    /// <param name="rule">The screw and its rows.</param>
    /// <param name="around">All panels that are in place by then.</param>
    /// <exception cref="ArgumentException">No two faces of them lie on each other.</exception>
    public static WrittenJoint Faces(Panel through, Panel receiving, JointRule rule, IEnumerable<Panel> around)
    {
        var (face, held) = FacesMeeting(through, receiving) ?? throw new ArgumentException($"No face of {through.Id} lies on one of {receiving.Id}.", nameof(receiving));
        var writer = new JointWriter(through, face, receiving, held, rule);
        writer.around.AddRange(around.Where(p => p != through && p != receiving && p.Placement is not null).Select(p => (p.Id, p.Placement!.ToAssembly(p.Box))));
        var (x, y) = (Shared(through, receiving, 0), Shared(through, receiving, 1));
        var alongX = x.Extent.Value >= y.Extent.Value;
        var (length, across) = alongX ? (x.Extent, y.Extent) : (y.Extent, x.Extent);
        var row = rule.Row.On(length);
        var beside = rule.Row.On(across).EndDistance;
        // On a narrow strip one row in the middle.
        const double Narrow = 4 * LeastFromEdge;
        var lines = across.Value < Narrow ? new[] { across / 2 } : [beside, across - beside];
        foreach (var wanted in lines)
        {
            var least = Math.Min(LeastFromEdge, beside.Value);
            var isLower = 2 * wanted.Value < across.Value + Tolerance.Length;
            var (low, high) = lines.Length == 1 ? (least, across.Value - least) : isLower ? (least, across.Value / 2) : (across.Value / 2, across.Value - least);
            var line = Dodging.Nearest(wanted, low, high, isLower, Along) ?? wanted;
            SizePoint Point(Size place) => PointAt(line, place);
            writer.Lay(row, length, Point, place => receiving.OnFace(Point(place)));
        }

        SizePoint PointAt(Size line, Size place) => through.ToAssembly(alongX ? new Position(x.From + place, y.From + line) : new Position(x.From + line, y.From + place));

        // A row along a groove moves beside it as a whole; single screws move along their row.
        string? Along(double line)
        {
            var met = row.Places.Select(place => ObstacleAt(Size.Constant(line), place)).OfType<string>().ToList();
            return 2 * met.Count > row.Count ? met[0] : null;
        }

        string? ObstacleAt(Size line, Size place) => writer.Obstacle(rule.Fastener!, place, p => PointAt(line, p), p => receiving.OnFace(PointAt(line, p)));

        return writer.Written(row);
    }

    /// <summary>Whether a face of one placed panel lies in the plane of a face of the other and looks at it.</summary>
    public static bool FacesMeet(Panel through, Panel receiving) => FacesMeeting(through, receiving) is not null;

    /// <summary>Whether the blocks of two placed panels whose faces are in one plane share a part of it.</summary>
    public static bool LieOnEachOther(Panel through, Panel receiving) =>
        Shared(through, receiving, 0).Extent.Value > Tolerance.Length && Shared(through, receiving, 1).Extent.Value > Tolerance.Length;

    // Along the length (0) or the width (1) of the first panel, in its frame: where the other lies on it.
    private static Stretch Shared(Panel through, Panel receiving, int panelAxis)
    {
        var axis = (panelAxis == 0 ? through.Placement!.AlongLength : through.Placement!.AlongWidth).Axis();
        var whole = panelAxis == 0 ? through.Length : through.Width;
        var (from, to) = receiving.Extent(axis);
        var (a, b) = (through.ToPanel(axis, from), through.ToPanel(axis, to));
        var (low, high) = a.Value <= b.Value ? (a, b) : (b, a);
        var begin = Tolerance.Exceeds(low.Value, 0) ? low : Size.Zero;
        var end = Tolerance.Exceeds(whole.Value, high.Value) ? high : whole;
        return new(begin, end == whole && begin == Size.Zero ? whole : (end - begin).As("shared-length"));
    }

    private WrittenJoint Written(FastenerRow? row) => new(
        new Joint(id, through.Id, entry, receiving.Id, held, row, [.. fasteners], rule.Housing.Value > 0 ? rule.Housing : null),
        [.. throughFeatures], [.. receivingFeatures]);

    private void Lay(FastenerRow row, Size length, Func<Size, SizePoint> point, Func<Size, Position> onHeld)
    {
        var places = row.Places.ToList();
        foreach (var place in places) Place(rule.Fastener!, place);
        if (rule.Beside is not { } second) return;
        foreach (var place in places)
        {
            Place(second, IsBeforeMiddle(place, length, point) ? place + BesideDistance : place - BesideDistance);
        }

        void Place(Fastener fastener, Size wanted)
        {
            var place = Clear(fastener, wanted, length, point, onHeld);
            Add(fastener, place, point, onHeld);
        }
    }

    // The wanted place, or the nearest one at which no bore of the fastener comes near anything drilled or cut already, towards the middle of
    // the joint first so that mirrored rows move alike. Where there is none it stays, and a check says so.
    private Size Clear(Fastener fastener, Size wanted, Size length, Func<Size, SizePoint> point, Func<Size, Position> onHeld)
    {
        const double Furthest = 80, Nearest = 25;
        var least = Math.Min(Nearest, Math.Min(wanted.Value, length.Value - wanted.Value));
        return Dodging.Nearest(
            wanted, least, length.Value - least, IsBeforeMiddle(wanted, length, point), at => Obstacle(fastener, Size.Constant(at), point, onHeld), Furthest) ?? wanted;
    }

    // What stands in the very middle counts as before it where the row runs to the right, back or top, so that mirrored panels, whose frames
    // run against each other, are drilled alike.
    private static bool IsBeforeMiddle(Size place, Size length, Func<Size, SizePoint> point)
    {
        var middle = length.Value / 2;
        if (!Tolerance.Same(place.Value, middle)) return place.Value < middle;
        var (first, last) = (point(Size.Zero), point(length));
        return last.X.Value + last.Y.Value + last.Z.Value > first.X.Value + first.Y.Value + first.Z.Value;
    }

    private string? Obstacle(Fastener fastener, Size place, Func<Size, SizePoint> point, Func<Size, Position> onHeld)
    {
        foreach (var (isThrough, bore) in BoresAt(fastener, place, point, onHeld, 0))
            if ((isThrough ? ofThrough : ofReceiving).Obstacle(bore) is { } obstacle) return obstacle;
        return around.Count == 0 || !fastener.IsDriven ? null : Covering(fastener, through.OnFace(point(place)).Point);
    }

    // The panel that stands before a head.
    private string? Covering(Fastener fastener, Point2 at)
    {
        const double Before = 1;
        var head = through.Placement!.ToAssembly(through.OnSurface(entry, at)) + through.Facing(entry).Vector() * Before;
        var half = new Point3(1, 1, 1) * (fastener.Mouth.Value / 2);
        return around.Find(p => p.Box.Intersection(new Box3(head - half, head + half)) is not null).Id;
    }

    private void Add(Fastener fastener, Size place, Func<Size, SizePoint> point, Func<Size, Position> onHeld)
    {
        foreach (var (isThrough, bore) in BoresAt(fastener, place, point, onHeld, fasteners.Count + 1))
        {
            (isThrough ? throughFeatures : receivingFeatures).Add(bore);
            (isThrough ? ofThrough : ofReceiving).Add(bore);
        }

        var (intoFace, intoHeld) = fastener.Reach(Remaining, receiving.Thickness);
        var into = receiving.Placement!.DirectionToAssembly(held.Into());
        var onPlane = receiving.Placement.ToAssembly(receiving.OnSurface(held, onHeld(place).Point));
        fasteners.Add(new PlacedFastener(fastener, place, onPlane - into * intoFace.Value, onPlane + into * intoHeld.Value));
    }

    // What is left of the panel with the face under the housing.
    private Size Remaining => rule.Housing.Value > 0 ? through.Thickness - rule.Housing : through.Thickness;

    private IEnumerable<(bool IsThrough, Bore Bore)> BoresAt(Fastener fastener, Size place, Func<Size, SizePoint> point, Func<Size, Position> onHeld, int number)
    {
        foreach (var bore in fastener.Bores(Remaining, receiving.Thickness))
        {
            var (surface, at) = bore.Site switch
            {
                Site.Entry => (entry, through.OnFace(point(place))),
                Site.Contact => (entry.Opposite(), through.OnFace(bore.Away is { } away ? Aside(point(place), away) : point(place))),
                Site.Held => (held, onHeld(place)),
                _ => (besideFace, receiving.OnFace(Inwards(point(place), fastener is CornerBracket && rule.Housing.Value > 0 ? bore.Away! + rule.Housing : bore.Away!))),
            };
            // A bore that starts in the bottom of a housing is that much deeper below the face; one beside the held panel starts at the face.
            var depth = bore is { Site: Site.Contact, Away: null } && rule.Housing.Value > 0 ? bore.Depth! + rule.Housing : bore.Depth;
            var made = depth is null ? Bore.Through(id, surface, at, bore.Diameter, bore.Use) : Bore.Blind(id, surface, at, bore.Diameter, depth, bore.Use);
            yield return (bore.Site is Site.Entry or Site.Contact, made with { Fastener = number });
        }
    }

    // From the middle of the held panel's edge past the face brackets sit on.
    private SizePoint Aside(SizePoint from, Size away)
    {
        var beyond = receiving.Thickness / 2 + away;
        var direction = receiving.Facing(besideFace);
        return Shifted(from, direction, beyond);
    }

    // Whether the panel with the face goes on beside a face of the held panel as far as a leg is long.
    private bool Reaches(Surface beside, Size leg)
    {
        var looks = receiving.Facing(beside);
        var ((low, high), (first, last)) = (receiving.Extent(looks.Axis()), through.Extent(looks.Axis()));
        return !Tolerance.Exceeds(leg.Value, looks.IsPositive() ? last.Value - high.Value : low.Value - first.Value);
    }

    private SizePoint Inwards(SizePoint from, Size away)
    {
        var into = receiving.Facing(held).Opposite();
        var (low, high) = receiving.Extent(normal);
        var plane = into.IsPositive() ? low : high;
        return At(normal, into.IsPositive() ? plane + away : plane - away, from);
    }

    private static SizePoint Shifted(SizePoint from, Direction direction, Size by)
    {
        var value = from.Along(direction.Axis());
        return At(direction.Axis(), direction.IsPositive() ? value + by : value - by, from);
    }

    private static SizePoint At(int axis, Size value, SizePoint others) =>
        new(axis == 0 ? value : others.X, axis == 1 ? value : others.Y, axis == 2 ? value : others.Z);

    private static SizePoint At(int along, Size alongValue, int across, Size acrossValue)
    {
        Size Pick(int axis) => axis == along ? alongValue : axis == across ? acrossValue : Size.Zero;
        return new SizePoint(Pick(0), Pick(1), Pick(2));
    }

    // The groove for the edge; one at the end of the panel is a rabbet, open to its side.
    private void House(ButtContact contact, int along, int across)
    {
        if (!(rule.Housing.Value > 0)) return;
        var width = rule.HousingPlay.Value > 0 ? (receiving.Thickness + rule.HousingPlay).As("housing-width") : receiving.Thickness;
        var (low, high) = receiving.Extent(across);
        var (first, last) = through.Extent(across);
        var middle = Tolerance.Same(low.Value, first.Value) ? first + width / 2
            : Tolerance.Same(high.Value, last.Value) ? last - width / 2
            : (low + high) / 2;
        Position End(Size place) => through.OnFace(At(along, receiving.ToAssembly(along, place), across, middle));
        var groove = Groove.Along(id, entry.Opposite(), End(contact.From), End(contact.From + contact.Length), width, rule.Housing);
        throughFeatures.Add(groove);
    }

    private static (Surface Face, Surface Held)? FacesMeeting(Panel through, Panel receiving)
    {
        Surface[] faces = [Surface.Inside, Surface.Outside];
        foreach (var face in faces)
            foreach (var held in faces)
            {
                var axis = through.Facing(face).Axis();
                double Level(Panel panel, Surface surface) => panel.Placement!.ToAssembly(panel.OnSurface(surface, default)).Along(axis);
                if (through.Facing(face) == receiving.Facing(held).Opposite() && Tolerance.Same(Level(through, face), Level(receiving, held))) return (face, held);
            }

        return null;
    }
}
