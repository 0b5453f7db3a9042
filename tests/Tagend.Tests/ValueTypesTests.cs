using System.Reflection;
using System.Runtime.CompilerServices;
using Tagend.Measures;
using Tagend.Output;
using Xunit;

namespace Tagend.Tests;

/// <summary>Rules that hold for all public types.</summary>
public class ValueTypesTests
{
    private static IEnumerable<Type> PublicTypes =>
        new[] { typeof(Length), typeof(Page) }.SelectMany(t => t.Assembly.GetExportedTypes());

    [Fact]
    public void Structs_All_AreReadOnly() => Assert.All(
        PublicTypes.Where(t => t.IsValueType && !t.IsEnum),
        t => Assert.True(t.IsDefined(typeof(IsReadOnlyAttribute)), t.FullName));

    [Fact]
    public void Properties_All_CannotBeSetAfterwards() => Assert.All(
        PublicTypes.SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly)),
        p => Assert.True(
            p.SetMethod is null
                || !p.SetMethod.IsPublic
                || p.SetMethod.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit)),
            $"{p.DeclaringType!.Name}.{p.Name}"));
}
