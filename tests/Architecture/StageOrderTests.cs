using System.Reflection;
using System.Text.RegularExpressions;
using Swapwright.Diagnostics;

namespace Swapwright.Tests.Architecture;

public sealed partial class StageOrderTests
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly s_generator = typeof(Finding).Assembly;

    [Fact]
    public void Files_Folders_AreTheKnownStages() =>
        Assert.All(GeneratorFiles.All.Select(StageOf).OfType<string>(), stage => Assert.Contains(stage, Stages.Uses.Keys));

    [Fact]
    public void Files_Namespaces_FollowTheFolder() =>
        Assert.All(
            GeneratorFiles.All.Where(file => StageOf(file) is not null),
            file => Assert.Contains($"namespace Swapwright.{Path.GetDirectoryName(file)!.Replace('\\', '.').Replace('/', '.')};", GeneratorFiles.Code(file), StringComparison.Ordinal));

    [Fact]
    public void Files_NamesOfStages_AreOfEarlierOnes() =>
        Assert.Empty(
            from file in GeneratorFiles.All
            let stage = StageOf(file)
            where stage is not null
            from other in Named(GeneratorFiles.Code(file)).Distinct(StringComparer.Ordinal)
            where !Stages.May(stage, other)
            select $"{file} uses {other}");

    [Fact]
    public void Types_SignaturesAndFields_AreOfEarlierStages()
    {
        var types = s_generator.GetTypes().Where(type => StageOf(type) is not null).ToList();
        Assert.NotEmpty(types);

        Assert.Empty(
            from type in types
            from used in Used(type).SelectMany(Parts).Distinct()
            let other = StageOf(used)
            where other is not null && !Stages.May(StageOf(type)!, other)
            select $"{type.FullName} uses {used.FullName}");
    }

    /// <summary>The folder of a file; null for one that lies beside the stages.</summary>
    private static string? StageOf(string file) => file.IndexOf('/', StringComparison.Ordinal) is var slash and > 0 ? file[..slash] : null;

    private static string? StageOf(Type type) =>
        type.Assembly == s_generator && type.Namespace?.Split('.') is ["Swapwright", var stage, ..] && Stages.Uses.ContainsKey(stage) ? stage : null;

    /// <summary>Stages that code names: in full, or the way a namespace inside <c>Swapwright</c> may be named.</summary>
    private static IEnumerable<string> Named(string code) =>
        FullName().Matches(code).Select(match => match.Groups["stage"].Value).Where(Stages.Uses.ContainsKey)
            .Concat(ShortName().Matches(code).Where(match => IsNamespace(match.Groups["stage"].Value, match.Groups["inside"].Value)).Select(match => match.Groups["stage"].Value));

    private static bool IsNamespace(string stage, string inside) =>
        Stages.Uses.ContainsKey(stage)
        && s_generator.GetTypes().Any(type => type.Namespace is { } space
            && (space == $"Swapwright.{stage}.{inside}" || (space == $"Swapwright.{stage}" && type.Name.Split('`')[0] == inside)));

    /// <summary>The types in a type's own declaration, its fields, its members' signatures and their local variables.</summary>
    private static IEnumerable<Type> Used(Type type)
    {
        var methods = type.GetMethods(Everything).Cast<MethodBase>().Concat(type.GetConstructors(Everything)).ToList();
        return type.GetInterfaces()
            .Append(type.BaseType)
            .Concat(type.GetFields(Everything).Select(field => field.FieldType))
            .Concat(methods.SelectMany(method => method.GetParameters()).Select(parameter => parameter.ParameterType))
            .Concat(methods.OfType<MethodInfo>().Select(method => method.ReturnType))
            .Concat(methods.SelectMany(method => method.GetMethodBody()?.LocalVariables ?? []).Select(local => local.LocalType))
            .OfType<Type>();
    }

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!) : type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type) : [type];

    [GeneratedRegex(@"\bSwapwright\.(?<stage>[A-Z]\w*)", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex FullName();

    [GeneratedRegex(@"(?<![\w.])(?<stage>[A-Z]\w*)\.(?<inside>[A-Z]\w*)", RegexOptions.CultureInvariant, 2000)]
    private static partial Regex ShortName();
}
