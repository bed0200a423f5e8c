using System.Reflection;

namespace GaitWatch.Simulator.Tests;

public class HouseTests
{
    [Fact]
    public void The_simulator_knows_no_project_of_the_product_it_tests()
    {
        var known = typeof(WalkGenerator).Assembly.GetReferencedAssemblies().Select(name => name.Name!);
        Assert.DoesNotContain(known, name => name.StartsWith("GaitWatch", StringComparison.Ordinal));
    }

    [Fact]
    public void Public_records_cannot_be_changed_after_they_are_made()
    {
        var records = typeof(WalkGenerator).Assembly.GetExportedTypes().Where(type => type.GetMethod("<Clone>$") is not null).ToArray();
        Assert.NotEmpty(records);
        foreach (var property in records.SelectMany(type => type.GetProperties(BindingFlags.Public | BindingFlags.Instance)))
        {
            var setter = property.SetMethod;
            Assert.True(
                setter is null || setter.ReturnParameter.GetRequiredCustomModifiers().Any(modifier => modifier.Name == "IsExternalInit"),
                $"{property.DeclaringType!.Name}.{property.Name} can be set");
        }
    }
}
