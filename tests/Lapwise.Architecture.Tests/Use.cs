using Mono.Cecil;
using Mono.Cecil.Cil;

namespace Lapwise.Architecture.Tests;

/// <summary>One place in compiled code that names something: in a signature, an attribute or a method body.</summary>
/// <param name="User">The outermost type it stands in, so that lambdas and iterators count as their author's.</param>
/// <param name="Generated">It stands in code that the compiler wrote for an iterator, a lambda or a record.</param>
public sealed record Use(TypeDefinition User, string Where, MemberReference Used, bool Generated)
{
    /// <summary>The used type, or the type that holds the used member, without its generic arguments.</summary>
    public TypeReference UsedType => (Used as TypeReference ?? Used.DeclaringType).GetElementType();

    /// <summary>Everything an assembly's own types use.</summary>
    public static IReadOnlyList<Use> In(string assemblyPath)
    {
        using var assembly = AssemblyDefinition.ReadAssembly(assemblyPath, new ReaderParameters { InMemory = true });
        return [.. assembly.MainModule.Types.SelectMany(t => In(t, t))];
    }

    private static IEnumerable<Use> In(TypeDefinition user, TypeDefinition type)
    {
        var generated = IsGenerated(type) || (type.DeclaringType is { } outer && IsGenerated(outer));
        IEnumerable<Use> Uses(string where, params IEnumerable<MemberReference?> used) =>
            used.OfType<MemberReference>().SelectMany(WithParts).Select(m => new Use(user, where, m, generated));

        return
        [
            .. Uses(type.Name, type.BaseType),
            .. Uses(type.Name, type.Interfaces.Select(i => i.InterfaceType)),
            .. Uses(type.Name, Attributes(type)),
            .. Uses(type.Name, type.GenericParameters.SelectMany(p => p.Constraints.Select(c => c.ConstraintType))),
            .. type.Fields.SelectMany(f => Uses(f.Name, [f.FieldType, .. Attributes(f)])),
            .. type.Properties.SelectMany(p => Uses(p.Name, Attributes(p))),
            .. type.Methods.SelectMany(m => Uses(m.Name, Signature(m))),
            .. type.Methods.Where(m => m.HasBody).SelectMany(m => Uses(m.Name, Body(m.Body))),
            .. type.NestedTypes.SelectMany(n => In(user, n)),
        ];
    }

    private static IEnumerable<MemberReference> Signature(MethodDefinition method) =>
    [
        method.ReturnType,
        .. method.Parameters.Select(p => p.ParameterType),
        .. method.Parameters.SelectMany(Attributes),
        .. method.GenericParameters.SelectMany(p => p.Constraints.Select(c => c.ConstraintType)),
        .. Attributes(method),
    ];

    private static IEnumerable<MemberReference?> Body(MethodBody body) =>
    [
        .. body.Variables.Select(v => v.VariableType),
        .. body.ExceptionHandlers.Select(h => h.CatchType),
        .. body.Instructions.Select((Instruction i) => i.Operand).OfType<MemberReference>(),
    ];

    private static IEnumerable<TypeReference> Attributes(ICustomAttributeProvider provider) =>
        provider.CustomAttributes.SelectMany(a =>
            a.ConstructorArguments.Select(c => c.Value).OfType<TypeReference>().Prepend(a.AttributeType));

    /// <summary>A generic or array names its parts too, and so does the signature of a called member.</summary>
    private static IEnumerable<MemberReference> WithParts(MemberReference member)
    {
        IEnumerable<MemberReference?> parts = member switch
        {
            GenericInstanceType generic => [generic.ElementType, .. generic.GenericArguments],
            TypeSpecification wrapped => [wrapped.ElementType],
            GenericInstanceMethod generic => [generic.ElementMethod, .. generic.GenericArguments],
            MethodReference method => [method.DeclaringType, method.ReturnType, .. method.Parameters.Select(p => p.ParameterType)],
            FieldReference field => [field.DeclaringType, field.FieldType],
            _ => [],
        };
        return parts.OfType<MemberReference>().Where(p => p is not GenericParameter).SelectMany(WithParts).Prepend(member);
    }

    private static bool IsGenerated(TypeDefinition type) => type.Name.StartsWith('<');
}
