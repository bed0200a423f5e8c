using System.Text;
using GaitWatch.Herd;

namespace GaitWatch.Web.Tests;

/// <summary>The register from CSV; the rules of quoting are those of RFC 4180, section 2.</summary>
public sealed class HerdCsvTests
{
    private const string Header = "cow,eid,pen,parity,calvedOn\r\n";

    [Fact]
    public void Rows_are_read_whatever_the_order_of_columns()
    {
        var content = Read("calvedOn,pen,cow,parity,eid\r\n2026-01-11,2,417,3,982000123456789\r\n,,418,,\r\n");
        Assert.Empty(content.Rejected);
        Assert.Empty(content.Notices);
        var (line, cow) = content.Rows[0];
        Assert.Equal(2, line);
        Assert.Equal("417", cow.Cow);
        Assert.Equal("982000123456789", cow.Eid.ToString());
        Assert.Equal("2", cow.Pen);
        Assert.Equal(3, cow.Parity);
        Assert.Equal(new DateOnly(2026, 1, 11), cow.CalvedOn);
        Assert.Equal(Some.Now, cow.From);
        Assert.Equal(new CowRegistration("418", Some.Now) { EnteredAt = Some.Now }, content.Rows[1].Registration);
    }

    [Fact]
    public void Dates_that_may_be_left_out_are_read_and_from_means_midnight_at_the_farm()
    {
        var content = Read("cow,eid,pen,parity,calvedOn,driedOffOn,dueOn,leftOn,from\n417,,2,3,2025-05-01,2026-03-01,2026-05-01,2026-06-01,2026-02-01\n");
        Assert.Empty(content.Rejected);
        var cow = content.Rows[0].Registration;
        Assert.Equal(new DateOnly(2026, 3, 1), cow.DriedOffOn);
        Assert.Equal(new DateOnly(2026, 5, 1), cow.DueOn);
        Assert.Equal(new DateOnly(2026, 6, 1), cow.LeftOn);
        // Amsterdam is an hour ahead of UTC in winter.
        Assert.Equal(new DateTimeOffset(2026, 1, 31, 23, 0, 0, TimeSpan.Zero), cow.From);
    }

    [Theory]
    // Byte order mark, CRLF, LF, no line break at the end, blank lines.
    [InlineData("\uFEFFcow,eid,pen,parity,calvedOn\r\n417,,2,,\r\n")]
    [InlineData("cow,eid,pen,parity,calvedOn\n417,,2,,")]
    [InlineData("\n\ncow,eid,pen,parity,calvedOn\n\n417,,2,,\n\n,,,,\n")]
    [InlineData("\"cow\",\"eid\",\"pen\",\"parity\",\"calvedOn\"\r\n\"417\",\"\",\"2\",\"\",\"\"\r\n")]
    [InlineData("COW,Eid,PEN,parity,calvedon\n 417 , , 2 ,,\n")]
    public void The_same_file_may_be_written_in_several_ways(string text)
    {
        var content = Read(text);
        Assert.Empty(content.Rejected);
        var cow = Assert.Single(content.Rows).Registration;
        Assert.Equal("417", cow.Cow);
        Assert.Equal("2", cow.Pen);
        Assert.Null(cow.Eid);
    }

    [Fact]
    public void A_quoted_field_may_hold_commas_and_quotes_and_line_numbers_count_the_lines_of_the_file()
    {
        var content = Read(Header + "\"17, \"\"Bella\"\"\",,\"2\",,\r\n\"18\r\nx\",,2,,\r\n19,bad,2,,\r\n");
        Assert.Equal("17, \"Bella\"", content.Rows[0].Registration.Cow);
        Assert.Equal([(3, "cow"), (5, "eid")], content.Rejected.Select(row => (row.Line, row.Field)));
    }

    [Fact]
    public void Semicolons_and_tabs_are_seen_and_said()
    {
        Assert.Equal(["Columns are parted by semicolons; read so."], Read("cow;eid;pen;parity;calvedOn\n417;;2;;\n").Notices.ToArray());
        Assert.Equal(["Columns are parted by tabs; read so."], Read("cow\teid\tpen\tparity\tcalvedOn\n417\t\t2\t\t\n").Notices.ToArray());
        Assert.Equal("2", Read("cow;eid;pen;parity;calvedOn\n417;;2;;\n").Rows[0].Registration.Pen);
    }

    [Fact]
    public void Other_columns_are_ignored_and_said()
    {
        var content = Read("cow,eid,pen,parity,calvedOn,breed\n417,,2,,,HF\n");
        Assert.Empty(content.Rejected);
        Assert.Equal(["Column 'breed' is ignored: it is not part of the register."], content.Notices.ToArray());
    }

    [Theory]
    [InlineData("417,98200012345678,2,3,", "eid", "eid is '98200012345678': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.")]
    [InlineData("417,9.82E+14,2,3,", "eid", "eid is '9.82E+14': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.")]
    [InlineData("417,,2,many,", "parity", "parity is 'many': a whole number of calvings is needed, or nothing.")]
    [InlineData("417,,2,-1,", "parity", "parity is '-1': a whole number of calvings is needed, or nothing.")]
    [InlineData("417,,2,99,", "parity", "parity is 99: 0 to 20 calvings.")]
    [InlineData("417,,2,3,11/01/2026", "calvedOn", "calvedOn is '11/01/2026': a date such as 2026-03-02 is needed, or nothing.")]
    [InlineData(",,2,3,", "cow", "cow is '': a number or name of 1 to 40 characters.")]
    [InlineData("417,,2", "row", "The row has 3 fields, the header 5: the same number is needed.")]
    [InlineData("417,,2,3,,6", "row", "The row has 6 fields, the header 5: the same number is needed.")]
    [InlineData("417,\"98\"2,2,3,", "row", "A quote stands where none may: a field with quotes is put in quotes itself, and each quote in it doubled (RFC 4180).")]
    [InlineData("417,,\"2,3,", "row", "A quote that opens a field is never closed, so that the rest of the file is in it: close it, or double a quote that is part of the text (RFC 4180).")]
    public void A_bad_row_is_named_by_its_line_with_field_and_fault(string row, string field, string fault)
    {
        var content = Read(Header + "1,,2,,\r\n" + row + "\r\n");
        Assert.Equal(new RejectedRow(3, field, fault), Assert.Single(content.Rejected));
        Assert.Equal("1", Assert.Single(content.Rows).Registration.Cow);
    }

    [Fact]
    public void Every_fault_of_a_row_is_named()
    {
        var content = Read(Header + ",x,2,many,soon\n");
        Assert.Equal(["calvedOn", "cow", "eid", "parity"], content.Rejected.Select(row => row.Field).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Rows_that_contradict_each_other_are_refused_the_later_one()
    {
        var content = Read(Header + "417,982000000000001,2,,\n418,982000000000001,2,,\n417,,3,,\n");
        Assert.Equal(
            [
                new RejectedRow(3, "eid", "eid is '982000000000001', which cow '417' has on line 2 already: a tag names one cow."),
                new RejectedRow(4, "cow", "cow is '417', which stands on line 2 already: once a cow, or each with its own from."),
            ],
            content.Rejected.ToArray());
        Assert.Single(content.Rows);
    }

    [Fact]
    public void A_cow_may_stand_twice_when_each_row_says_from_when_it_holds()
    {
        var content = Read("cow,eid,pen,parity,calvedOn,from\n417,982000000000001,2,,,2026-01-01\n417,982000000000001,5,,,2026-02-01\n");
        Assert.Empty(content.Rejected);
        Assert.Equal(2, content.Rows.Length);
    }

    [Theory]
    [InlineData("", "file", "The file is empty: a first line with the columns cow,eid,pen,parity,calvedOn is needed, then a line a cow.")]
    [InlineData("cow,pen,parity,calvedOn\n417,2,,\n", "eid", "Column 'eid' is missing from the header: cow,eid,pen,parity,calvedOn are needed, in any order; a field may be empty.")]
    [InlineData("cow,eid,pen,parity,calvedOn,pen\n417,,2,,,\n", "pen", "Column 'pen' stands twice in the header: once is needed.")]
    public void A_header_that_does_not_do_is_refused_and_nothing_read(string text, string field, string fault)
    {
        var content = Read(text);
        Assert.Equal(new RejectedRow(1, field, fault), Assert.Single(content.Rejected));
        Assert.Empty(content.Rows);
    }

    [Fact]
    public void Text_that_is_not_utf8_is_refused()
    {
        var content = HerdCsv.Read([.. Encoding.UTF8.GetBytes(Header), .. Encoding.Latin1.GetBytes("Zoé,,2,,\n")], new FarmCalendar(FarmHost.Zone), Some.Now);
        Assert.Equal("The file is not UTF-8 text: save it as \"CSV UTF-8\".", Assert.Single(content.Rejected).Fault);
    }

    private static HerdCsvContent Read(string text) => HerdCsv.Read(Encoding.UTF8.GetBytes(text), new FarmCalendar(FarmHost.Zone), Some.Now);
}
