using System.Reflection;

namespace Swapwright.Site.Rendering.Compiled;

/// <summary>
/// Reads one property of one type, without reflection and without boxing where that can be avoided. Delegates are closed over
/// reference types only, whose code is shared: a program without a runtime has no code for a value type it did not foresee.
/// </summary>
internal abstract class PropertyGetter
{
    public abstract object? Get(object owner);

    public virtual bool Truth(object owner) => Value.IsTrue(Get(owner));

    public virtual void Write(object owner, PageRun run) => run.Write(Get(owner));

    public static PropertyGetter Of(PropertyInfo property)
    {
        var type = property.PropertyType;
        var read = property.GetMethod!;
        var owner = property.DeclaringType!;
        var kind = owner.IsValueType ? null
            : type == typeof(bool) ? typeof(OfBoolean<>).MakeGenericType(owner)
            : type == typeof(int) ? typeof(OfNumber<>).MakeGenericType(owner)
            : !type.IsValueType ? typeof(OfReference<,>).MakeGenericType(owner, type)
            : null;
        return kind is null ? new ByInvoker(MethodInvoker.Create(read)) : (PropertyGetter)Activator.CreateInstance(kind, read)!;
    }

    private sealed class OfReference<TOwner, TValue>(MethodInfo read) : PropertyGetter
        where TOwner : class
        where TValue : class
    {
        private readonly Func<TOwner, TValue?> _read = read.CreateDelegate<Func<TOwner, TValue?>>();

        public override object? Get(object owner) => _read((TOwner)owner);
    }

    private sealed class OfBoolean<TOwner>(MethodInfo read) : PropertyGetter
        where TOwner : class
    {
        private static readonly object s_yes = true;
        private static readonly object s_no = false;

        private readonly Func<TOwner, bool> _read = read.CreateDelegate<Func<TOwner, bool>>();

        public override object Get(object owner) => Truth(owner) ? s_yes : s_no;

        public override bool Truth(object owner) => _read((TOwner)owner);
    }

    private sealed class OfNumber<TOwner>(MethodInfo read) : PropertyGetter
        where TOwner : class
    {
        private readonly Func<TOwner, int> _read = read.CreateDelegate<Func<TOwner, int>>();

        public override object Get(object owner) => _read((TOwner)owner);

        public override void Write(object owner, PageRun run) => run.Output.Write(_read((TOwner)owner));
    }

    private sealed class ByInvoker(MethodInvoker read) : PropertyGetter
    {
        public override object? Get(object owner) => read.Invoke(owner);
    }
}
