namespace GaitWatch.Acceptance;

/// <summary>The tests that look at the demo barn: its year is made once for all of them.</summary>
[CollectionDefinition(Name)]
public sealed class DemoGroup : ICollectionFixture<DemoOnScreen>
{
    public const string Name = "the demo barn";
}
