namespace GaitWatch.Web;

/// <summary>What is wrong with a request: for each field one or more sentences that say what was found and what would be right.</summary>
internal sealed class Faults
{
    private readonly SortedDictionary<string, List<string>> _byField = new(StringComparer.Ordinal);

    public bool Any => _byField.Count > 0;

    public bool Has(string field) => _byField.ContainsKey(field);

    public static Faults Of(string field, string sentence) => new Faults().Add(field, sentence);

    public Faults Add(string field, string sentence)
    {
        if (!_byField.TryGetValue(field, out var sentences))
            _byField[field] = sentences = [];
        // A member that is read twice is told once.
        if (!sentences.Contains(sentence))
            sentences.Add(sentence);
        return this;
    }

    /// <summary>Adds what a check by the field tells; of a field that is at fault already nothing more is said.</summary>
    public Faults AddNew(IEnumerable<(string Field, string Sentence)> found)
    {
        var before = _byField.Keys.ToHashSet(StringComparer.Ordinal);
        foreach (var (field, sentence) in found.Where(fault => !before.Contains(fault.Field)))
            Add(field, sentence);
        return this;
    }

    public Dictionary<string, string[]> ToErrors() => _byField.ToDictionary(f => f.Key, f => f.Value.ToArray());

    public override string ToString() => string.Join(' ', _byField.Values.SelectMany(sentences => sentences));
}
