using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

/// <summary>The tables of the store and their keys. Writing in bulk goes past the change tracker; reading and the schema go through here.</summary>
internal sealed class BarnContext(DbContextOptions<BarnContext> options) : DbContext(options)
{
    public DbSet<FrameRow> Frames => Set<FrameRow>();

    public DbSet<TagRow> Tags => Set<TagRow>();

    public DbSet<DevicePassageRow> DevicePassages => Set<DevicePassageRow>();

    public DbSet<StatusRow> Statuses => Set<StatusRow>();

    public DbSet<WriteRow> Writes => Set<WriteRow>();

    public DbSet<RejectedRow> Rejected => Set<RejectedRow>();

    public DbSet<CounterRow> Counters => Set<CounterRow>();

    public DbSet<PassageRow> Passages => Set<PassageRow>();

    public DbSet<CowSeenRow> CowsSeen => Set<CowSeenRow>();

    public DbSet<AssessmentRow> Assessments => Set<AssessmentRow>();

    public DbSet<AlertRow> Alerts => Set<AlertRow>();

    public DbSet<AlertStepRow> AlertSteps => Set<AlertStepRow>();

    public DbSet<AlertRedirectRow> AlertRedirects => Set<AlertRedirectRow>();

    public DbSet<RecoveryRow> Recoveries => Set<RecoveryRow>();

    public DbSet<CheckpointRow> Checkpoints => Set<CheckpointRow>();

    public DbSet<ZeroRow> Zeros => Set<ZeroRow>();

    public DbSet<ShiftRow> Shifts => Set<ShiftRow>();

    public DbSet<MarkRow> Marks => Set<MarkRow>();

    public DbSet<OutboxRow> Outbox => Set<OutboxRow>();

    public DbSet<SetAsideRow> SetAside => Set<SetAsideRow>();

    public DbSet<SeriesImageRow> SeriesImages => Set<SeriesImageRow>();

    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<FrameRow>(row =>
        {
            row.ToTable("frames").HasKey(r => r.Seq);
            row.Property(r => r.Seq).ValueGeneratedNever();
            row.HasIndex(r => new { r.Platform, r.T0 }).IsUnique();
        });
        modelBuilder.Entity<TagRow>(row =>
        {
            row.ToTable("tags").HasKey(r => r.Seq);
            row.Property(r => r.Seq).ValueGeneratedNever();
            row.HasIndex(r => new { r.Platform, r.At, r.Eid }).IsUnique();
        });
        modelBuilder.Entity<DevicePassageRow>(row =>
        {
            row.ToTable("device_passages").HasKey(r => r.Seq);
            row.Property(r => r.Seq).ValueGeneratedNever();
            row.HasIndex(r => new { r.Platform, r.DeviceId }).IsUnique();
        });
        modelBuilder.Entity<StatusRow>(row =>
        {
            row.ToTable("statuses").HasKey(r => r.Platform);
        });
        modelBuilder.Entity<WriteRow>(row =>
        {
            row.ToTable("writes").HasKey(r => r.Seq);
            row.Property(r => r.Seq).ValueGeneratedNever();
            row.HasIndex(r => r.Digest).IsUnique();
        });
        modelBuilder.Entity<RejectedRow>(row =>
        {
            row.ToTable("rejected").HasKey(r => r.Seq);
            row.Property(r => r.Seq).ValueGeneratedNever();
            row.HasIndex(r => r.ReceivedAt);
        });
        modelBuilder.Entity<CounterRow>().ToTable("counters").HasKey(r => r.Name);

        modelBuilder.Entity<PassageRow>(row =>
        {
            row.ToTable("passages").HasKey(r => r.Id);
            row.HasIndex(r => new { r.Cow, r.StartedAt });
            row.HasIndex(r => new { r.Platform, r.StartedAt });
            row.HasIndex(r => r.StartedAt);
            row.HasIndex(r => r.EndedAt);
            row.HasIndex(r => r.Eid);
            row.ComplexProperty(r => r.Lf);
            row.ComplexProperty(r => r.Rf);
            row.ComplexProperty(r => r.Lh);
            row.ComplexProperty(r => r.Rh);
        });
        modelBuilder.Entity<CowSeenRow>().ToTable("cows_seen").HasKey(r => r.Cow);
        modelBuilder.Entity<AssessmentRow>(row =>
        {
            row.ToTable("assessments").HasKey(r => r.PassageId);
            row.HasIndex(r => new { r.Cow, r.At });
            row.HasIndex(r => r.At);
        });
        modelBuilder.Entity<AlertRow>(row =>
        {
            row.ToTable("alerts").HasKey(r => r.Id);
            row.HasIndex(r => r.RaisedAt);
            row.HasIndex(r => new { r.State, r.RaisedAt });
            row.HasIndex(r => r.CloseReason);
            row.HasIndex(r => new { r.Cow, r.RaisedAt });
        });
        modelBuilder.Entity<AlertStepRow>(row =>
        {
            row.ToTable("alert_steps").HasKey(r => new { r.AlertId, r.Number });
            row.HasIndex(r => r.At);
        });
        modelBuilder.Entity<AlertRedirectRow>().ToTable("alert_redirects").HasKey(r => r.OldId);
        modelBuilder.Entity<RecoveryRow>(row =>
        {
            row.ToTable("recoveries").HasKey(r => r.FindingId);
            row.HasIndex(r => r.Cow);
            row.HasIndex(r => r.TreatedAt);
        });
        modelBuilder.Entity<CheckpointRow>(row =>
        {
            row.ToTable("checkpoints").HasKey(r => r.Head);
            row.Property(r => r.Head).ValueGeneratedNever();
        });
        modelBuilder.Entity<ZeroRow>().ToTable("zeros").HasKey(r => new { r.Platform, r.Bucket });
        modelBuilder.Entity<ShiftRow>().ToTable("shifts").HasKey(r => r.Platform);
        modelBuilder.Entity<MarkRow>().ToTable("marks").HasKey(r => r.Name);

        modelBuilder.Entity<OutboxRow>().ToTable("outbox").HasKey(r => r.Seq);
        modelBuilder.Entity<SetAsideRow>(row =>
        {
            row.ToTable("outbox_set_aside").HasKey(r => r.Body);
            row.HasIndex(r => r.At);
        });
        modelBuilder.Entity<SeriesImageRow>().ToTable("series_images").HasKey(r => r.Entity);
    }
}
