namespace GaitWatch.Lameness.Tests.Evaluation;

/// <summary>What all rules together raise on independent surprises, over the sum of what the table predicts for each.</summary>
public sealed class FalseAlarmBudgetTests
{
    /// <summary>Where <c>ExcursionPeaks</c> starts from in a herd whose noise is the model's: well below one.</summary>
    [Fact]
    public void Rules_err_together_and_need_two_passages()
    {
        const int dof = 5;
        const double limit = 6.5;
        var table = FalseAlarmTable.For(Array.IndexOf(CowNoise.Tails, (double)dof));
        var scale = Matrix3.Diagonal(9e-4, 9e-4, 9e-4);
        var inverse = scale.Inverse();
        var designs = new Vector3[CowEvidence.RuleCount];
        Designs.Fill(new GaitWatch.Lameness.Balances(0.2, 0, 0), designs);
        var predicted = 0.0;
        for (var i = 0; i < designs.Length; i++)
            predicted += table.Rate(FalseAlarmTable.PlaceOfSize(Math.Sqrt(inverse.Quadratic(designs[i]))), FalseAlarmTable.Place(Limit(i)));

        var random = new Random(11);
        var rules = new Cusum[designs.Length];
        const int passages = 700_000;
        var raised = 0;
        for (var n = 0; n < passages; n++)
        {
            var chi = 0.0;
            for (var i = 0; i < dof; i++)
                chi += Math.Pow(Gauss(random), 2);
            var deviation = 0.03 * Math.Sqrt(dof / chi);
            var v = new Vector3(deviation * Gauss(random), deviation * Gauss(random), deviation * Gauss(random));
            var distance = inverse.Quadratic(v);
            var any = false;
            for (var i = 0; i < rules.Length; i++)
            {
                rules[i].Add(v, distance, designs[i], inverse, dof, default, n);
                any |= rules[i].Value >= Limit(i) && rules[i].Count >= 2;
            }

            if (!any)
                continue;
            raised++;
            Array.Clear(rules);
        }

        // Some 1,000 alarms: 3 % standard error.
        Assert.InRange(raised / (passages * predicted), 0.50, 0.68);

        static double Limit(int rule) => limit + WatchedPattern.All[rule / WatchedPattern.DesignsEach].LimitShift;
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
