using System.Collections.Immutable;
using NJsonSchema.Validation;
using Swapwright.Diagnostics;

namespace Swapwright.Source;

/// <summary>The validator's errors as findings: own words, exact places, one finding a cause.</summary>
internal sealed class SchemaReport(JsonMirror mirror)
{
    public ImmutableArray<Finding> Findings(ICollection<ValidationError> errors) =>
        [.. errors.Select(error => new Finding(FindingKinds.Schema, error.Kind.ToString(), mirror.OriginOf(error.Token!).Node.Place))];
}
