using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace GaitWatch.Store;

/// <summary>Lets the migrations tool see the model without a running service.</summary>
internal sealed class DesignTimeBarnContext : IDesignTimeDbContextFactory<BarnContext>
{
    public BarnContext CreateDbContext(string[] args) =>
        new(new DbContextOptionsBuilder<BarnContext>().UseSqlite("Data Source=:memory:").Options);
}
