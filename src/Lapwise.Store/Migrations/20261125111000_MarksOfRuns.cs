using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lapwise.Store.Migrations
{
    /// <inheritdoc />
    public partial class MarksOfRuns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "marks",
                columns: table => new
                {
                    arrival = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    job = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    run = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_marks", x => x.arrival);
                });

            migrationBuilder.CreateIndex(
                name: "IX_marks_job",
                table: "marks",
                column: "job");

            migrationBuilder.CreateIndex(
                name: "IX_marks_run_id",
                table: "marks",
                columns: new[] { "run", "id" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "marks");
        }
    }
}
