using System.Collections.Immutable;
using Newtonsoft.Json.Linq;
using NJsonSchema;
using NJsonSchema.Validation;
using Swapwright.Diagnostics;
using Origin = Swapwright.Source.JsonMirror.Origin;

namespace Swapwright.Source;

/// <summary>The validator's errors as findings: own words, exact places, one finding a cause.</summary>
internal sealed class SchemaReport(JsonMirror mirror)
{
    public ImmutableArray<Finding> Findings(ICollection<ValidationError> errors, int most)
    {
        var faults = errors.SelectMany(Faults).Where(fault => fault.At.Node is not ScalarNode { IsStandIn: true }).ToList();
        var list = new FindingList(faults.Count > 0 ? faults[0].Finding.Place.File : string.Empty, most);
        var ordered = OneEach(faults)
            .OrderBy(finding => finding.Place)
            .ThenBy(finding => finding.Message, StringComparer.Ordinal)
            .DistinctBy(finding => (finding.Place, finding.Message));
        foreach (var finding in ordered)
        {
            list.Add(finding);
        }

        return list.ToImmutable();
    }

    /// <summary>A value of the wrong type is not also out of its list; a mistyped key is not also a missing one.</summary>
    private static IEnumerable<Finding> OneEach(List<SchemaFault> faults)
    {
        var meant = faults.Where(fault => fault.Meant is not null).Select(fault => (fault.At, fault.Meant!)).ToHashSet();
        var gravest = faults.Where(fault => fault.Rank != FaultRank.Key)
            .GroupBy(fault => fault.At)
            .ToDictionary(group => group.Key, group => group.Min(fault => fault.Rank));
        return faults
            .Where(fault => fault.Missing is null || !meant.Contains((fault.At, fault.Missing)))
            .Where(fault => fault.Rank == FaultRank.Key ? gravest.GetValueOrDefault(fault.At, FaultRank.Key) != FaultRank.Type : fault.Rank == gravest[fault.At])
            .Select(fault => fault.Finding);
    }

    private IEnumerable<SchemaFault> Faults(ValidationError error) => error switch
    {
        ChildSchemaValidationError { Kind: ValidationErrorKind.NotAnyOf or ValidationErrorKind.NotOneOf } branches => Branches(branches),
        ChildSchemaValidationError inner => inner.Errors.Values.SelectMany(one => one).SelectMany(Faults),
        MultiTypeValidationError types => Types(types),
        _ => [SchemaFault.Of(error, OriginOf(error))],
    };

    private Origin OriginOf(ValidationError error) => mirror.OriginOf(error.Token is JProperty property ? property.Parent! : (JToken)error.Token!);

    /// <summary>Several types are allowed: what is wrong within the type that the value has, else that it has none of them.</summary>
    private IEnumerable<SchemaFault> Types(MultiTypeValidationError error)
    {
        var origin = OriginOf(error);
        foreach (var one in error.Errors.Values.Where(one => !one.Any(SchemaFault.IsTypeError)))
        {
            return one.SelectMany(Faults);
        }

        return [SchemaFault.WrongType(origin, SchemaWords.TypesOf(error.Schema.Type))];
    }

    /// <summary>Of several forms the one that fits best is taken as the one that was meant.</summary>
    private ImmutableArray<SchemaFault> Branches(ChildSchemaValidationError error)
    {
        var origin = OriginOf(error);
        var fitting = error.Errors.Where(branch => branch.Value.Count == 0).Select(branch => branch.Key).ToList();
        if (fitting.Count > 1)
        {
            return [SchemaFault.Ambiguous(origin, fitting)];
        }

        var branches = error.Errors.Values.Select((errors, order) => new Branch([.. errors.SelectMany(Faults)], origin, order)).ToList();
        if (branches.All(branch => branch.Faults is [{ Missing: not null } only] && only.At == origin))
        {
            return [SchemaFault.MissingOneOf(origin, [.. branches.Select(branch => branch.Faults[0].Missing!).Distinct(StringComparer.Ordinal)])];
        }

        if (branches.All(branch => branch.IsOtherType))
        {
            return [SchemaFault.WrongType(origin, [.. branches.SelectMany(branch => branch.Types).Distinct(StringComparer.Ordinal)])];
        }

        return branches.OrderBy(branch => branch.IsOtherType).ThenBy(branch => branch.OtherMarks).ThenBy(branch => branch.Faults.Length).ThenBy(branch => branch.Order).First().Faults;
    }

    private sealed class Branch(ImmutableArray<SchemaFault> faults, Origin origin, int order)
    {
        public ImmutableArray<SchemaFault> Faults { get; } = faults;

        public int Order { get; } = order;

        public bool IsOtherType { get; } = faults.Any(fault => fault.At == origin && fault.Rank == FaultRank.Type);

        public IEnumerable<string> Types => Faults.Where(fault => fault.At == origin && fault.Rank == FaultRank.Type).SelectMany(fault => fault.Types);

        /// <summary>Keys whose only allowed value is another one: they mark the branch as not the one that was meant.</summary>
        public int OtherMarks { get; } = faults.Count(fault => fault.IsMark && fault.At.Parent == origin);
    }
}
