using System.Reflection;
using System.Runtime.CompilerServices;

namespace Flushback.Geometry.Tests;

/// <summary>What holds for every public type of the project, whoever adds the next one.</summary>
public class ConventionTests
{
    public static TheoryData<Type> PublicTypes => [.. typeof(Outline).Assembly.GetExportedTypes()];

    public static TheoryData<Type> PublicValues =>
        [.. typeof(Outline).Assembly.GetExportedTypes().Where(type => type.IsValueType && !type.IsEnum)];

    [Theory]
    [MemberData(nameof(PublicValues))]
    public void Public_structs_are_read_only(Type type) =>
        Assert.NotNull(type.GetCustomAttribute<IsReadOnlyAttribute>());

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void Nothing_public_can_be_changed(Type type)
    {
        const BindingFlags all = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static;
        Assert.DoesNotContain(
            type.GetFields(all),
            field => !field.IsInitOnly && !field.IsLiteral && !field.IsSpecialName
        );
        Assert.DoesNotContain(type.GetProperties(all), property => property.SetMethod is { } set && !IsInit(set));
    }

    /// <summary>A record prints its properties, and one that returns its own kind would print without end.</summary>
    [Theory]
    [MemberData(nameof(PublicValues))]
    public void Every_value_can_be_printed(Type type) =>
        Assert.False(string.IsNullOrEmpty(RuntimeHelpers.GetUninitializedObject(type).ToString()));

    [Theory]
    [MemberData(nameof(PublicValues))]
    public void Every_value_equals_its_copy(Type type) =>
        Assert.Equal(RuntimeHelpers.GetUninitializedObject(type), RuntimeHelpers.GetUninitializedObject(type));

    [Theory]
    [MemberData(nameof(PublicTypes))]
    public void Namespaces_stay_within_the_project(Type type) =>
        Assert.StartsWith("Flushback.Geometry", type.Namespace, StringComparison.Ordinal);

    private static bool IsInit(MethodInfo set) =>
        set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
