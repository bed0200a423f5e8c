using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace GaitWatch.Tests;

/// <summary>What a built assembly refers to, read from its metadata without running it.</summary>
internal sealed class BuiltAssembly : IDisposable
{
    private readonly PEReader _file;
    private readonly MetadataReader _metadata;

    private BuiltAssembly(string path)
    {
        _file = new PEReader(File.OpenRead(path));
        _metadata = _file.GetMetadataReader();
    }

    /// <summary>Opens a project's assembly; it lies beside the tests, which know the host.</summary>
    public static BuiltAssembly Open(string project) =>
        new(Path.Combine(AppContext.BaseDirectory, (project == "GaitWatch" ? "gaitwatch" : project) + ".dll"));

    public IEnumerable<string> ReferencedAssemblies =>
        _metadata.AssemblyReferences.Select(handle => _metadata.GetString(_metadata.GetAssemblyReference(handle).Name));

    /// <summary>Every type of another assembly that is named anywhere, such as <c>System.DateTime</c>.</summary>
    public IEnumerable<string> ReferencedTypes => _metadata.TypeReferences.Select(handle => Name(_metadata.GetTypeReference(handle)));

    /// <summary>Every member of another assembly's type that is used anywhere, such as <c>System.DateTime.get_Now/0</c> (parameters counted).</summary>
    public IEnumerable<string> ReferencedMembers
    {
        get
        {
            foreach (var handle in _metadata.MemberReferences)
            {
                var member = _metadata.GetMemberReference(handle);
                if (member.Parent.Kind != HandleKind.TypeReference || member.GetKind() != MemberReferenceKind.Method)
                    continue;
                var signature = _metadata.GetBlobReader(member.Signature);
                if (signature.ReadSignatureHeader().IsGeneric)
                    signature.ReadCompressedInteger();
                yield return $"{Name(_metadata.GetTypeReference((TypeReferenceHandle)member.Parent))}.{_metadata.GetString(member.Name)}/{signature.ReadCompressedInteger()}";
            }
        }
    }

    public void Dispose() => _file.Dispose();

    private string Name(TypeReference type) => $"{_metadata.GetString(type.Namespace)}.{_metadata.GetString(type.Name)}";
}
