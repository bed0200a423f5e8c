namespace GaitWatch.Gait.Tests;

/// <summary>
/// Animal codes by ISO 11784 (from memory; no copy at hand): a code of 64 bits holds 10 bits of country (ISO 3166-1 numeric) or maker code
/// (900 to 998, 999 for tests) and 38 bits of national part, 0 to 274877906943.
/// </summary>
public class EidTests
{
    [Theory]
    [InlineData("276000000000001", 276)]
    [InlineData("982000123456789", 982)]
    [InlineData("040274877906943", 40)]
    public void A_code_is_read_and_written_alike(string digits, int code)
    {
        var eid = Eid.Parse(digits);
        Assert.Equal(code, eid.CountryOrMaker);
        Assert.Equal(digits, eid.ToString());
        Assert.False(eid.IsTest);
    }

    [Fact]
    public void Code_999_is_a_test_transponder() => Assert.True(Eid.Parse("999000000000001").IsTest);

    [Fact]
    public void The_national_part_has_38_bits() => Assert.Equal(274_877_906_943, Eid.LargestNationalPart);

    [Theory]
    [InlineData(null, "15 digits")]
    [InlineData("", "15 digits")]
    [InlineData("98200012345678", "15 digits")]
    [InlineData("9820001234567890", "15 digits")]
    [InlineData("98200012345678x", "15 digits")]
    [InlineData("٩٨٢٠٠٠١٢٣٤٥٦٧٨٩", "15 digits")]
    [InlineData("000000123456789", "begins with 000")]
    [InlineData("982274877906944", "exceed 274877906943")]
    public void What_is_no_code_is_refused_with_what_would_be_right(string? digits, string says)
    {
        Assert.False(Eid.TryParse(digits, out _, out var fault));
        Assert.Contains(says, fault, StringComparison.Ordinal);
    }
}
