using ShopDrawings.Kernel;

namespace ShopDrawings.Tests;

/// <summary>One test for each invariant that the comment of <see cref="Assembly"/> promises, on every fixture.</summary>
public class AssemblyTests
{
    public static TheoryData<string> Names => Fixtures.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void Ids_are_unique(string name)
    {
        var assembly = Fixtures.Design(name).Assembly;

        foreach (var ids in new[] { assembly.Panels.Select(p => p.Id), assembly.Joints.Select(j => j.Id), assembly.Hardware.Select(h => h.Id) })
            Assert.Equal(ids.Distinct(), ids);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Joints_and_hardware_name_panels_that_are_there(string name)
    {
        var assembly = Fixtures.Design(name).Assembly;

        foreach (var joint in assembly.Joints)
            Assert.All(new[] { joint.Through, joint.Receiving }, id => Assert.NotNull(assembly.Panel(id).Placement));
        Assert.All(assembly.Hardware.SelectMany(h => h.Mounts), m => assembly.Panel(m.Panel));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_feature_is_written_by_its_panel_a_joint_hardware_or_the_panel_it_is_for(string name)
    {
        var assembly = Fixtures.Design(name).Assembly;
        var writers = assembly.Joints.Select(j => j.Id).Concat(assembly.Hardware.Select(h => h.Id)).Concat(assembly.Panels.Select(p => p.Id)).ToHashSet();

        Assert.All(assembly.Panels.SelectMany(p => p.Features), f => Assert.Contains(f.Origin, writers));
        foreach (var joint in assembly.Joints)
        {
            // Every fastener, numbered from 1, has bores in both panels.
            foreach (var panel in new[] { joint.Through, joint.Receiving })
                Assert.Equal(
                    Enumerable.Range(1, joint.Fasteners.Length),
                    assembly.Panel(panel).Features.OfType<Bore>().Where(f => f.Origin == joint.Id).Select(f => f.Fastener!.Value).Distinct().Order());
        }

        // A gasket is glued.
        Assert.All(assembly.Hardware.Where(h => h.Kind != HardwareKind.Gasket), h => Assert.All(h.Mounts, m => Assert.Contains(assembly.Panel(m.Panel).Features, f => f.Origin == h.Id)));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_size_recomputes_from_its_derivation(string name)
    {
        foreach (var size in Fixtures.Design(name).Assembly.Panels.SelectMany(p => p.Sizes))
        {
            Assert.Equal(size.Value, size.Recomputed(), 1e-9);
            Assert.NotEmpty(size.ToString());
        }
    }
}
