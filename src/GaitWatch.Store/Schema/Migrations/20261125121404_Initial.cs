using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace GaitWatch.Store.Schema.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "alert_redirects",
                columns: table => new
                {
                    OldId = table.Column<string>(type: "TEXT", nullable: false),
                    NewId = table.Column<string>(type: "TEXT", nullable: true),
                    At = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_alert_redirects", x => x.OldId);
                });

            migrationBuilder.CreateTable(
                name: "alert_steps",
                columns: table => new
                {
                    AlertId = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Kind = table.Column<int>(type: "INTEGER", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_alert_steps", x => new { x.AlertId, x.Number });
                });

            migrationBuilder.CreateTable(
                name: "alerts",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Cow = table.Column<string>(type: "TEXT", nullable: false),
                    Pattern = table.Column<string>(type: "TEXT", nullable: false),
                    Leg = table.Column<string>(type: "TEXT", nullable: false),
                    RaisedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    ClosedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    CloseReason = table.Column<int>(type: "INTEGER", nullable: true),
                    State = table.Column<int>(type: "INTEGER", nullable: false),
                    RevisedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    Body = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_alerts", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "assessments",
                columns: table => new
                {
                    PassageId = table.Column<string>(type: "TEXT", nullable: false),
                    Cow = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Reasons = table.Column<string>(type: "TEXT", nullable: false),
                    Baseline = table.Column<int>(type: "INTEGER", nullable: false),
                    ExpectedLf = table.Column<double>(type: "REAL", nullable: true),
                    ExpectedRf = table.Column<double>(type: "REAL", nullable: true),
                    ExpectedLh = table.Column<double>(type: "REAL", nullable: true),
                    ExpectedRh = table.Column<double>(type: "REAL", nullable: true),
                    SpreadLf = table.Column<double>(type: "REAL", nullable: true),
                    SpreadRf = table.Column<double>(type: "REAL", nullable: true),
                    SpreadLh = table.Column<double>(type: "REAL", nullable: true),
                    SpreadRh = table.Column<double>(type: "REAL", nullable: true),
                    ResidualForeHind = table.Column<double>(type: "REAL", nullable: true),
                    ResidualFore = table.Column<double>(type: "REAL", nullable: true),
                    ResidualHind = table.Column<double>(type: "REAL", nullable: true),
                    CommonForeHind = table.Column<double>(type: "REAL", nullable: true),
                    CommonFore = table.Column<double>(type: "REAL", nullable: true),
                    CommonHind = table.Column<double>(type: "REAL", nullable: true),
                    EvidenceLf = table.Column<double>(type: "REAL", nullable: false),
                    EvidenceRf = table.Column<double>(type: "REAL", nullable: false),
                    EvidenceLh = table.Column<double>(type: "REAL", nullable: false),
                    EvidenceRh = table.Column<double>(type: "REAL", nullable: false),
                    EvidenceBothHind = table.Column<double>(type: "REAL", nullable: false),
                    EvidenceBothFore = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_assessments", x => x.PassageId);
                });

            migrationBuilder.CreateTable(
                name: "checkpoints",
                columns: table => new
                {
                    Head = table.Column<long>(type: "INTEGER", nullable: false),
                    Saved = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_checkpoints", x => x.Head);
                });

            migrationBuilder.CreateTable(
                name: "counters",
                columns: table => new
                {
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_counters", x => x.Name);
                });

            migrationBuilder.CreateTable(
                name: "cows_seen",
                columns: table => new
                {
                    Cow = table.Column<string>(type: "TEXT", nullable: false),
                    FirstSeenAt = table.Column<long>(type: "INTEGER", nullable: false),
                    LastSeenAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_cows_seen", x => x.Cow);
                });

            migrationBuilder.CreateTable(
                name: "device_passages",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    DeviceId = table.Column<string>(type: "TEXT", nullable: false),
                    Eid = table.Column<long>(type: "INTEGER", nullable: true),
                    StartedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Lf = table.Column<double>(type: "REAL", nullable: false),
                    Rf = table.Column<double>(type: "REAL", nullable: false),
                    Lh = table.Column<double>(type: "REAL", nullable: false),
                    Rh = table.Column<double>(type: "REAL", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_device_passages", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "frames",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    T0 = table.Column<long>(type: "INTEGER", nullable: false),
                    End = table.Column<long>(type: "INTEGER", nullable: false),
                    FrameSeq = table.Column<long>(type: "INTEGER", nullable: false),
                    Hz = table.Column<double>(type: "REAL", nullable: false),
                    Cells = table.Column<int>(type: "INTEGER", nullable: false),
                    Samples = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_frames", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "marks",
                columns: table => new
                {
                    Name = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_marks", x => x.Name);
                });

            migrationBuilder.CreateTable(
                name: "outbox",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    WrittenAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Points = table.Column<int>(type: "INTEGER", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outbox", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "outbox_set_aside",
                columns: table => new
                {
                    Body = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outbox_set_aside", x => x.Body);
                });

            migrationBuilder.CreateTable(
                name: "passages",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    FromFrames = table.Column<bool>(type: "INTEGER", nullable: false),
                    Eid = table.Column<long>(type: "INTEGER", nullable: true),
                    Cow = table.Column<string>(type: "TEXT", nullable: true),
                    StartedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    EndedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Accepted = table.Column<bool>(type: "INTEGER", nullable: false),
                    Reasons = table.Column<string>(type: "TEXT", nullable: false),
                    WeightKg = table.Column<double>(type: "REAL", nullable: true),
                    StrideSeconds = table.Column<double>(type: "REAL", nullable: true),
                    SpeedMetresPerSecond = table.Column<double>(type: "REAL", nullable: true),
                    LeftEndsPercent = table.Column<double>(type: "REAL", nullable: true),
                    LeftEndsWeight = table.Column<double>(type: "REAL", nullable: true),
                    LeftEndsLoadKg = table.Column<double>(type: "REAL", nullable: true),
                    RightEndsPercent = table.Column<double>(type: "REAL", nullable: true),
                    RightEndsWeight = table.Column<double>(type: "REAL", nullable: true),
                    RightEndsLoadKg = table.Column<double>(type: "REAL", nullable: true),
                    Lf_Footfalls = table.Column<int>(type: "INTEGER", nullable: false),
                    Lf_LoadKg = table.Column<double>(type: "REAL", nullable: true),
                    Lf_PeakKg = table.Column<double>(type: "REAL", nullable: true),
                    Lf_Share = table.Column<double>(type: "REAL", nullable: true),
                    Lf_ShareError = table.Column<double>(type: "REAL", nullable: true),
                    Lf_StanceSeconds = table.Column<double>(type: "REAL", nullable: true),
                    Lh_Footfalls = table.Column<int>(type: "INTEGER", nullable: false),
                    Lh_LoadKg = table.Column<double>(type: "REAL", nullable: true),
                    Lh_PeakKg = table.Column<double>(type: "REAL", nullable: true),
                    Lh_Share = table.Column<double>(type: "REAL", nullable: true),
                    Lh_ShareError = table.Column<double>(type: "REAL", nullable: true),
                    Lh_StanceSeconds = table.Column<double>(type: "REAL", nullable: true),
                    Rf_Footfalls = table.Column<int>(type: "INTEGER", nullable: false),
                    Rf_LoadKg = table.Column<double>(type: "REAL", nullable: true),
                    Rf_PeakKg = table.Column<double>(type: "REAL", nullable: true),
                    Rf_Share = table.Column<double>(type: "REAL", nullable: true),
                    Rf_ShareError = table.Column<double>(type: "REAL", nullable: true),
                    Rf_StanceSeconds = table.Column<double>(type: "REAL", nullable: true),
                    Rh_Footfalls = table.Column<int>(type: "INTEGER", nullable: false),
                    Rh_LoadKg = table.Column<double>(type: "REAL", nullable: true),
                    Rh_PeakKg = table.Column<double>(type: "REAL", nullable: true),
                    Rh_Share = table.Column<double>(type: "REAL", nullable: true),
                    Rh_ShareError = table.Column<double>(type: "REAL", nullable: true),
                    Rh_StanceSeconds = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_passages", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "recoveries",
                columns: table => new
                {
                    FindingId = table.Column<string>(type: "TEXT", nullable: false),
                    Cow = table.Column<string>(type: "TEXT", nullable: false),
                    TreatedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false),
                    Days = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recoveries", x => x.FindingId);
                });

            migrationBuilder.CreateTable(
                name: "rejected",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Topic = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    Detail = table.Column<string>(type: "TEXT", nullable: false),
                    Payload = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_rejected", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "series_images",
                columns: table => new
                {
                    Entity = table.Column<string>(type: "TEXT", nullable: false),
                    Points = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_series_images", x => x.Entity);
                });

            migrationBuilder.CreateTable(
                name: "shifts",
                columns: table => new
                {
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_shifts", x => x.Platform);
                });

            migrationBuilder.CreateTable(
                name: "statuses",
                columns: table => new
                {
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    Online = table.Column<bool>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: true),
                    Firmware = table.Column<string>(type: "TEXT", nullable: true),
                    ReceivedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_statuses", x => x.Platform);
                });

            migrationBuilder.CreateTable(
                name: "tags",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Eid = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_tags", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "writes",
                columns: table => new
                {
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    Digest = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Body = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_writes", x => x.Seq);
                });

            migrationBuilder.CreateTable(
                name: "zeros",
                columns: table => new
                {
                    Platform = table.Column<string>(type: "TEXT", nullable: false),
                    Bucket = table.Column<long>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Kg = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_zeros", x => new { x.Platform, x.Bucket });
                });

            migrationBuilder.CreateIndex(
                name: "IX_alert_steps_At",
                table: "alert_steps",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_alerts_CloseReason",
                table: "alerts",
                column: "CloseReason");

            migrationBuilder.CreateIndex(
                name: "IX_alerts_Cow_RaisedAt",
                table: "alerts",
                columns: new[] { "Cow", "RaisedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_alerts_RaisedAt",
                table: "alerts",
                column: "RaisedAt");

            migrationBuilder.CreateIndex(
                name: "IX_alerts_State_RaisedAt",
                table: "alerts",
                columns: new[] { "State", "RaisedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_assessments_At",
                table: "assessments",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_assessments_Cow_At",
                table: "assessments",
                columns: new[] { "Cow", "At" });

            migrationBuilder.CreateIndex(
                name: "IX_device_passages_Platform_DeviceId",
                table: "device_passages",
                columns: new[] { "Platform", "DeviceId" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_frames_Platform_T0",
                table: "frames",
                columns: new[] { "Platform", "T0" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_outbox_set_aside_At",
                table: "outbox_set_aside",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_passages_Cow_StartedAt",
                table: "passages",
                columns: new[] { "Cow", "StartedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_passages_Eid",
                table: "passages",
                column: "Eid");

            migrationBuilder.CreateIndex(
                name: "IX_passages_EndedAt",
                table: "passages",
                column: "EndedAt");

            migrationBuilder.CreateIndex(
                name: "IX_passages_Platform_StartedAt",
                table: "passages",
                columns: new[] { "Platform", "StartedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_passages_StartedAt",
                table: "passages",
                column: "StartedAt");

            migrationBuilder.CreateIndex(
                name: "IX_recoveries_Cow",
                table: "recoveries",
                column: "Cow");

            migrationBuilder.CreateIndex(
                name: "IX_recoveries_TreatedAt",
                table: "recoveries",
                column: "TreatedAt");

            migrationBuilder.CreateIndex(
                name: "IX_rejected_ReceivedAt",
                table: "rejected",
                column: "ReceivedAt");

            migrationBuilder.CreateIndex(
                name: "IX_tags_Platform_At_Eid",
                table: "tags",
                columns: new[] { "Platform", "At", "Eid" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_writes_Digest",
                table: "writes",
                column: "Digest",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "alert_redirects");

            migrationBuilder.DropTable(
                name: "alert_steps");

            migrationBuilder.DropTable(
                name: "alerts");

            migrationBuilder.DropTable(
                name: "assessments");

            migrationBuilder.DropTable(
                name: "checkpoints");

            migrationBuilder.DropTable(
                name: "counters");

            migrationBuilder.DropTable(
                name: "cows_seen");

            migrationBuilder.DropTable(
                name: "device_passages");

            migrationBuilder.DropTable(
                name: "frames");

            migrationBuilder.DropTable(
                name: "marks");

            migrationBuilder.DropTable(
                name: "outbox");

            migrationBuilder.DropTable(
                name: "outbox_set_aside");

            migrationBuilder.DropTable(
                name: "passages");

            migrationBuilder.DropTable(
                name: "recoveries");

            migrationBuilder.DropTable(
                name: "rejected");

            migrationBuilder.DropTable(
                name: "series_images");

            migrationBuilder.DropTable(
                name: "shifts");

            migrationBuilder.DropTable(
                name: "statuses");

            migrationBuilder.DropTable(
                name: "tags");

            migrationBuilder.DropTable(
                name: "writes");

            migrationBuilder.DropTable(
                name: "zeros");
        }
    }
}
