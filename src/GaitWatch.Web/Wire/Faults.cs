namespace GaitWatch.Web;

/// <summary>What is wrong with a request: for each field one or more sentences that say what was found and what would be right.</summary>
internal sealed class Faults
{
    private readonly SortedDictionary<string, List<string>> _byField = new(StringComparer.Ordinal);

    public bool Any => _byField.Count > 0;

    public static Faults Of(string field, string sentence) => new Faults().Add(field, sentence);

    public Faults Add(string field, string sentence)
    {
        if (!_byField.TryGetValue(field, out var sentences))
            _byField[field] = sentences = [];
        sentences.Add(sentence);
        return this;
    }

    public Dictionary<string, string[]> ToErrors() => _byField.ToDictionary(f => f.Key, f => f.Value.ToArray());

    public override string ToString() => string.Join(' ', _byField.Values.SelectMany(sentences => sentences));
}
