namespace GaitWatch.Web;

/// <summary>What is wrong with a field, in the reader's language: what would be right.</summary>
internal static class FormTexts
{
    private static readonly Words s_words = new("Form");

    public static string Fault(string field) => s_words.Text($"Fault.{field}");
}
