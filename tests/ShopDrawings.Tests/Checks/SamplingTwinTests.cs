using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using ShopDrawings.Kernel;

namespace ShopDrawings.Tests.Checks;

/// <summary>The checks on collisions against a twin that tries points, on random cabinets; and the twin against arrangements worked by hand.</summary>
public class SamplingTwinTests
{
    // What the product does not look for, with the reason.
    private static readonly Dictionary<MeetingKind, string> NotLookedFor = new()
    {
        [MeetingKind.Swinging] = "no check asks yet what a door meets on its way; the axis of a motion is only roughly that of cup hinges, which lift a door clear of its neighbours",
        [MeetingKind.SlidingIntoDoor] = "doors are open when something slides out between them; whether it passes an open door is decided by packers",
    };

    private const string Boards = "project: p\nboards:\n  ply: {kind: plywood, thickness: 18}\n  thin: {kind: hardboard, thickness: 6}\nhardware:\n  peg: {length: 20, width: 20, height: 50}\n";

    [Fact]
    public void Every_collision_of_a_random_cabinet_is_found_and_no_other_of_panels()
    {
        var seen = new Dictionary<MeetingKind, int>();
        var clear = 0;
        Gen.Int[0, 1_000_000_000].Sample(seed =>
        {
            var project = new RandomProject(seed);
            project.Throw([.. Fixtures.DesignOf(project.Text).Assembly.Panels.Select(p => (p.Id, p.Length.Value, p.Width.Value))]);
            var design = Fixtures.DesignOf(project.Text);
            var findings = Shop.Check(design).Where(f => f.Rule is "panels-overlap" or "hardware-fits").ToList();
            var twin = new SamplingTwin(Facts(design), seed);
            List<Meeting> meetings = [.. twin.Standing(), .. twin.Sliding(), .. twin.Swinging()];
            foreach (var meeting in meetings)
            {
                seen[meeting.Kind] = seen.GetValueOrDefault(meeting.Kind) + 1;
                if (!NotLookedFor.ContainsKey(meeting.Kind) && !findings.Exists(f => Names(f, meeting))) Assert.Fail($"nothing says that {meeting}\n{project.Text}");
            }

            if (meetings.TrueForAll(m => NotLookedFor.ContainsKey(m.Kind))) clear++;
            // What is round can leave points too slim to hit.
            foreach (var finding in findings.Where(f => f.Rule == "panels-overlap" && f.Numbers.All(n => n.Value > 4)))
                if (!meetings.Exists(m => m.Kind == MeetingKind.Standing && finding.Panels.Contains(m.A) && finding.Panels.Contains(m.B))) Assert.Fail($"no point shows that {finding.Message}\n{project.Text}");
        }, iter: 60, threads: 1);

        // The twin has seen every kind of meeting, those that nobody looks for too, and cabinets without one.
        Assert.All(Enum.GetValues<MeetingKind>(), kind => Assert.True(seen.GetValueOrDefault(kind) > 10, kind.ToString()));
        Assert.InRange(clear, 1, 60);
    }

    // Told from the text and the ids of the panels alone.
    [Fact]
    public void Every_door_shelf_and_drawer_that_moves_says_so_with_all_that_moves_with_it() => Gen.Int[0, 1_000_000_000].Sample(seed =>
    {
        var text = new RandomProject(seed).Text;
        var assembly = Fixtures.DesignOf(text).Assembly;
        var ids = assembly.Panels.Select(p => p.Id).ToList();
        var moving = assembly.Motions.ToDictionary(m => m.Id);
        var expected = new Dictionary<string, HashSet<string>>();
        foreach (var id in ids)
        {
            var path = id[..(id.LastIndexOf('/') + 1)];
            if (Regex.Match(id, @"^(.*\bdrawer-\d+)-") is { Success: true, Groups: [_, var drawer] }) expected.TryAdd(drawer.Value, [.. ids.Where(i => i.StartsWith(drawer.Value + "-", StringComparison.Ordinal) && !i.EndsWith("packer", StringComparison.Ordinal))]);
            else if (id.EndsWith("sliding-shelf", StringComparison.Ordinal)) expected[id] = [id, $"{path}left-runner", $"{path}right-runner"];
            else if (id.EndsWith("door", StringComparison.Ordinal)) expected[id] = [id, .. ids.Where(i => i.StartsWith(id + "-lining", StringComparison.Ordinal) || (id.EndsWith("right-door", StringComparison.Ordinal) && i == $"{path}centre-strip"))];
        }

        if (assembly.Misfits.IsEmpty)
        {
            Assert.Equal(2 * Regex.Count(text, "hang: pair") + Regex.Count(text, "hang: (left|right)"), assembly.Motions.OfType<Swing>().Count());
            Assert.Equal(Regex.Count(text, "sliding-shelf:") + Regex.Matches(text, @"drawers: \{count: (\d)").Sum(m => m.Groups[1].ValueSpan[0] - '0'), assembly.Motions.OfType<Travel>().Count());
        }

        Assert.Equal(expected.Keys.Order(StringComparer.Ordinal), moving.Keys.Order(StringComparer.Ordinal));
        Assert.All(expected, e => Assert.Equal(e.Value.Order(StringComparer.Ordinal), moving[e.Key].Panels.Order(StringComparer.Ordinal)));
        Assert.All(assembly.Joints, j => Assert.All(assembly.Motions, m => Assert.Equal(m.Panels.Contains(j.Through), m.Panels.Contains(j.Receiving))));
    }, iter: 60, threads: 1);

    [Theory]
    [InlineData("[0, 0, 18]", "bottom", "", false)]                                              // lies on it
    [InlineData("[0, 0, 17.95]", "bottom", "", false)]                                           // touches, to the margin
    [InlineData("[0, 0, 17.8]", "bottom", "", true)]
    [InlineData("[0, 0, -17.8]", "top", "", true)]
    [InlineData("[399.8, 199.8, -100]", "right", "", true)]                                      // a corner alone
    [InlineData("[400, 199.8, -100]", "right", "", false)]
    [InlineData("[0, 100, 17]", "front", "grooves: [{from: [0, 109], to: [400, 109], width: 18.2, depth: 1.2}]", false)]
    [InlineData("[0, 100, 17]", "front", "grooves: [{from: [0, 109], to: [400, 109], width: 17.6, depth: 1.2}]", true)]
    [InlineData("[0, 100, 17]", "front", "grooves: [{from: [0, 109], to: [400, 109], width: 18.2, depth: 0.8}]", true)]
    [InlineData("[0, 100, 17]", "front", "grooves: [{from: [0, 109], to: [399, 109], width: 18.2, depth: 1.2}]", true)]
    [InlineData("[0, 100, 17]", "front", "grooves: [{from: [0, 109], to: [400, 109], width: 18.2, depth: 1.2, face: outside}]", true)]
    [InlineData("[100, 60, -50]", "front", "cut-outs: [{rectangle: {at: [95, 55], length: 310, width: 30}}]", false)]
    [InlineData("[100, 60, -50]", "front", "cut-outs: [{rectangle: {at: [95, 55], length: 200, width: 30}}]", true)]
    [InlineData("[100, 60, -50]", "front", "slots: [{from: [110, 69], to: [390, 69], width: 60}]", false)]
    [InlineData("[100, 60, -50]", "front", "slots: [{from: [110, 69], to: [390, 69], width: 20}]", true)]
    [InlineData("[300, 150, 0]", "bottom", "outline: [[0, 0], [400, 0], [400, 40], {through: [322.9, 122.9], to: [240, 200]}, [0, 200]]", false)]
    [InlineData("[220, 60, 0]", "bottom", "outline: [[0, 0], [400, 0], [400, 40], {through: [322.9, 122.9], to: [240, 200]}, [0, 200]]", true)]
    public void Twin_sees_panels_that_collide_and_no_others(string corner, string outside, string features, bool collide)
    {
        var twin = TwinOf($"panels:\n  a: {{board: ply, length: 400, width: 200, place: {{corner: [0, 0, 0], outside: bottom}}, {features}}}\n  b: {{board: ply, length: 400, width: 200, place: {{corner: {corner}, outside: {outside}}}}}\n");

        Assert.Equal(collide ? ["a-b"] : [], twin.Standing().Select(m => $"{m.A}-{m.B}"));
    }

    // A peg 50 mm long stands in the middle of a; b lies 30 mm above a.
    [Theory]
    [InlineData("", true)]
    [InlineData("bores: [{at: [200, 100], diameter: 29, depth: 18}]", false)]
    [InlineData("bores: [{at: [200, 100], diameter: 27}]", true)]
    [InlineData("bores: [{at: [210, 100], diameter: 29}]", true)]
    [InlineData("bores: [{at: [200, 100], diameter: 40, depth: 15}]", true)]
    [InlineData("bores: [{at: [200, 100], diameter: 40, depth: 15, face: outside}]", true)]
    [InlineData("bores: [{edge: left, at: 100, diameter: 17, depth: 250}]", true)]
    public void Twin_sees_hardware_in_a_panel_but_not_in_its_bore(string features, bool collides)
    {
        var twin = TwinOf($"panels:\n  a: {{board: ply, length: 400, width: 200, place: {{corner: [0, 0, 0], outside: bottom}}}}\n  b: {{board: ply, length: 400, width: 200, place: {{corner: [0, 0, 48], outside: bottom}}, {features}}}\nfittings: {{p: {{hardware: peg, panel: a, at: [200, 100]}}}}\n");

        Assert.Equal(collides ? ["b-p"] : [], twin.Standing().Select(m => $"{m.A}-{m.B}"));
    }

    [Theory]
    [InlineData("[219, 100]", true)]
    [InlineData("[220, 100]", false)]
    [InlineData("[200, 80]", false)]
    [InlineData("[200, 81]", true)]
    public void Twin_sees_hardware_that_takes_one_space(string at, bool collides) => Assert.Equal(collides ? ["p-q"] : [], TwinOf(
        $"panels:\n  a: {{board: ply, length: 400, width: 200, place: {{corner: [0, 0, 0], outside: bottom}}}}\nfittings: {{p: {{hardware: peg, panel: a, at: [200, 100]}}, q: {{hardware: peg, panel: a, at: {at}}}}}\n").Standing().Select(m => $"{m.A}-{m.B}"));

    // The runners reach from 28 to 98, the shelf to 116, a peg on it to 166; they begin 30 mm behind the front and travel 450 mm.
    [Theory]
    [InlineData("[18, 0, 170]", "")]
    [InlineData("[18, 0, 120]", "p-x")]
    [InlineData("[18, 0, 110]", "p-x sliding-shelf-x")]
    [InlineData("[18, 0, 50]", "left-runner-x p-x right-runner-x sliding-shelf-x")]
    [InlineData("[18, -400, 110]", "sliding-shelf-x")]                                             // the peg stands further back
    [InlineData("[18, -320, 110]", "p-x sliding-shelf-x")]
    [InlineData("[18, -440, 110]", "")]
    [InlineData("[18, 10, 0]", "left-runner-x right-runner-x", 28.2)]
    public void Twin_sees_what_stands_in_the_way_of_what_slides(string corner, string expected, double width = 100)
    {
        var twin = TwinOf(FormattableString.Invariant(
            $"cabinet: {{board: ply, width: 600, height: 800, depth: 560, bottom: under, recess: 0, sliding-shelf: {{slide: side-450, set-back: 30}}}}\npanels: {{x: {{board: ply, length: 564, width: {width}, place: {{corner: {corner}, outside: front}}}}}}\nfittings: {{p: {{hardware: peg, panel: sliding-shelf, at: [250, 100]}}}}\n"));

        Assert.DoesNotContain(twin.Standing(), m => m.A != "bottom");
        Assert.Equal(expected, string.Join(' ', twin.Sliding().Select(m => $"{m.A}-{m.B}").Order(StringComparer.Ordinal)));
    }

    // A door 497 mm wide before a cabinet 500 mm wide turns by 110 degrees about (1.5, −2), or about (498.5, −2) where it hangs on the right.
    [Theory]
    [InlineData("left", "[-30, -200, 100]", true)]
    [InlineData("right", "[-30, -200, 100]", false)]
    [InlineData("right", "[512, -200, 100]", true)]
    [InlineData("left", "[512, -200, 100]", false)]
    [InlineData("left", "[250, -300, 100]", true)]
    [InlineData("right", "[250, -300, 100]", true)]
    [InlineData("left", "[250, -540, 100]", false)]
    [InlineData("left", "[450, -400, 100]", false)]                                              // the arc passes before it
    [InlineData("left", "[-120, -200, 100]", false)]                                             // the door stops before it
    public void Twin_sees_what_stands_in_the_way_of_a_door(string hang, string corner, bool meets)
    {
        var twin = TwinOf($"cabinet: {{board: ply, width: 500, height: 600, depth: 300, doors: {{board: ply, hang: {hang}, hinge: cup-35-110}}}}\npanels: {{x: {{board: ply, length: 200, width: 100, place: {{corner: {corner}, outside: left, along: top}}}}}}\n");

        Assert.Empty(twin.Standing());
        Assert.Equal(meets ? ["door-x"] : [], twin.Swinging().Select(m => $"{m.A}-{m.B}"));
    }

    // A finding names a thing by its id, what slides also by its motion's.
    private static bool Names(Finding finding, Meeting meeting)
    {
        var words = finding.Message.Split(' ', ',', ':', ';').ToHashSet();
        bool Named(string id) => finding.Panels.Contains(id) || words.Contains(id);
        return (Named(meeting.A) || (meeting.Motion is { } motion && Named(motion))) && Named(meeting.B);
    }

    private static SamplingTwin TwinOf(string text) => new(Facts(Fixtures.DesignOf(Boards + text)), 1);

    private static JsonElement Facts(Design design)
    {
        using var stream = new MemoryStream();
        new JsonExporter().Export(new Job(design, [], [])).Single(o => o.Path == "assembly.json").Write(stream);
        return JsonDocument.Parse(stream.ToArray()).RootElement;
    }
}
