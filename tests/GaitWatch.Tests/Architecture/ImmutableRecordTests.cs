using System.Reflection;
using System.Runtime.CompilerServices;

namespace GaitWatch.Tests;

/// <summary>A record, once made, does not change: what has been handed on can be relied on.</summary>
public class ImmutableRecordTests
{
    [Theory]
    [InlineData("GaitWatch.Gait")]
    [InlineData("GaitWatch.Lameness")]
    [InlineData("GaitWatch.Herd")]
    [InlineData("GaitWatch.Store")]
    [InlineData("GaitWatch.Barn")]
    [InlineData("GaitWatch.Web")]
    [InlineData("GaitWatch.Simulator")]
    [InlineData("gaitwatch")]
    public void Records_have_no_setters_but_init(string assembly)
    {
        var settable = Assembly.Load(assembly).GetTypes()
            .Where(IsRecord)
            .SelectMany(type => type.GetProperties(BindingFlags.Instance | BindingFlags.Public))
            .Where(property => property.SetMethod is { IsPublic: true } setter && !IsInit(setter))
            .Select(property => $"{property.DeclaringType}.{property.Name}")
            .Distinct();
        Assert.Empty(settable);
    }

    [Fact]
    public void The_look_at_records_sees_a_setter_where_one_is()
    {
        Assert.True(IsRecord(typeof(Changing)));
        Assert.False(IsInit(typeof(Changing).GetProperty(nameof(Changing.Value))!.SetMethod!));
    }

    // The compiler gives every record a method that writes its members for ToString.
    private static bool IsRecord(Type type) =>
        type.GetMethod("PrintMembers", BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.DeclaredOnly) is { } print
        && print.IsDefined(typeof(CompilerGeneratedAttribute)) | type.GetMethod("<Clone>$") is not null | type.IsValueType;

    private static bool IsInit(MethodInfo setter) => setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private sealed record Changing
    {
        public int Value { get; set; }
    }
}
