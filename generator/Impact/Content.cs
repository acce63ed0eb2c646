using System.Collections;
using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Reflection;
using System.Runtime.CompilerServices;
using Swapwright.Diagnostics;
using Swapwright.Knowledge;

namespace Swapwright.Impact;

/// <summary>
/// Compares entities by what they hold, member by member: every record of <c>Knowledge</c> is covered, also one that is added
/// later. Not looked at are places in files, conditions (their effect is compared as regions), and the order of what is written as a mapping.
/// </summary>
internal static class Content
{
    private static readonly ConcurrentDictionary<Type, ImmutableArray<PropertyInfo>> s_members = new();

    /// <summary>The members in which two entities of one kind differ, by name.</summary>
    public static IEnumerable<string> Differing(object one, object other, IReadOnlyCollection<string> besides) =>
        Members(one.GetType()).Where(member => !besides.Contains(member.Name) && !Same(member.GetValue(one), member.GetValue(other))).Select(member => member.Name);

    public static bool Same(object? one, object? other) => (one, other) switch
    {
        (null, null) => true,
        (null, _) or (_, null) => false,
        (Place, Place) or (Condition, Condition) => true,
        // Nothing compares where a fastener is tightened or a tool asked for as a region, so their conditions are compared as they are written.
        (TaskTool left, TaskTool right) => SameMembers(left, right) && SameTest(left.When, right.When),
        (FastenerEntry left, FastenerEntry right) => SameMembers(left, right) && SameTest(left.When, right.When),
        (string, _) or (ValueType and IConvertible, _) => one.Equals(other),
        (IDictionary left, IDictionary right) => SameEntries(left, right),
        (IEnumerable left, IEnumerable right) => SameItems(Sorted(left), Sorted(right)),
        (ITuple left, ITuple right) => Enumerable.Range(0, left.Length).All(at => Same(left[at], right[at])),
        _ => SameMembers(one, other),
    };

    private static bool SameMembers(object one, object other) => one.GetType() == other.GetType() && Members(one.GetType()).All(member => Same(member.GetValue(one), member.GetValue(other)));

    private static bool SameTest(Condition? one, Condition? other) => (one, other) switch
    {
        (null, null) => true,
        (AllOf left, AllOf right) => SameTests(left.Terms, right.Terms),
        (AnyOf left, AnyOf right) => SameTests(left.Terms, right.Terms),
        (NotOf left, NotOf right) => SameTest(left.Term, right.Term),
        (null, _) or (_, null) => false,
        _ => SameMembers(one, other),
    };

    private static bool SameTests(ImmutableArray<Condition> one, ImmutableArray<Condition> other) => one.Length == other.Length && one.Zip(other).All(pair => SameTest(pair.First, pair.Second));

    private static bool SameEntries(IDictionary one, IDictionary other) =>
        one.Count == other.Count && one.Keys.Cast<object>().All(key => other.Contains(key) && Same(one[key], other[key]));

    private static bool SameItems(List<object?> one, List<object?> other) =>
        one.Count == other.Count && one.Zip(other).All(pair => Same(pair.First, pair.Second));

    private static List<object?> Sorted(IEnumerable items)
    {
        var list = items.Cast<object?>().ToList();
        return list.Count > 1 && list.TrueForAll(item => KeyOf(item) is not null) ? [.. list.OrderBy(KeyOf, StringComparer.Ordinal)] : list;
    }

    /// <summary>The key under which an item is written in its mapping; null for items of lists.</summary>
    private static string? KeyOf(object? item) => item switch
    {
        DeviceEntry device => device.Role,
        PinEntry pin => pin.Cavity,
        PortEntry port => port.Role,
        Accessory accessory => accessory.Position,
        Answer answer => answer.Position,
        StatedValue value => value.Name,
        ChoiceOption option => option.Id,
        FactOption option => option.Id,
        BeltDrive drive => drive.Id,
        KeyValuePair<string, PlugEntry> plug => plug.Key,
        KeyValuePair<string, decimal> number => number.Key,
        _ => null,
    };

    private static ImmutableArray<PropertyInfo> Members(Type type) => s_members.GetOrAdd(type, static of =>
    [
        .. of.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            // What has no setter is worked out from what has.
            .Where(member => member.GetIndexParameters().Length == 0 && member.PropertyType != typeof(Place) && (member.CanWrite || IsPair(of)))
            .OrderBy(member => member.Name, StringComparer.Ordinal),
    ]);

    private static bool IsPair(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(KeyValuePair<,>);
}
