namespace GaitWatch.Web.Tests;

public sealed class LabelPlacesTests
{
    [Fact]
    public void A_word_stands_where_it_is_wanted()
    {
        var label = new LabelPlaces(0, 400).Place("flagged", 100, 12, 41);
        Assert.Equal(new ChartLabel("flagged", 104, 12, IsLeftOf: false), label);
        Assert.Equal(new ChartLabel("flagged", 296, 12, IsLeftOf: true), new LabelPlaces(0, 400).Place("flagged", 300, 12));
    }

    [Fact]
    public void No_two_words_meet_however_many_marks_a_year_has()
    {
        foreach (var seed in Enumerable.Range(0, 50))
        {
            var random = new Random(seed);
            var places = new LabelPlaces(42, 394);
            var words = Enumerable.Range(0, 30).Select(_ => places.Place(random.Next(2) == 0 ? "flagged" : "recovered", random.Next(42, 394), 12, 41, 54)).OfType<ChartLabel>().ToArray();
            Assert.True(words.Length >= 5, $"Only {words.Length} words found room.");
            Assert.All(words, word => Assert.InRange(word.From, 42, 394));
            Assert.All(words, word => Assert.InRange(word.To, 42, 394));
            foreach (var (one, other) in words.SelectMany((one, i) => words[(i + 1)..].Select(other => (one, other))))
                Assert.False(one.Meets(other), $"{one} meets {other}");
        }
    }

    [Fact]
    public void A_word_that_finds_no_room_is_left_out()
    {
        var places = new LabelPlaces(0, 70);
        Assert.NotNull(places.Place("flagged", 10, 12));
        Assert.Null(places.Place("flagged", 12, 12));
    }
}
