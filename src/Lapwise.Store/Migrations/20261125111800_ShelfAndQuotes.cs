using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lapwise.Store.Migrations
{
    /// <inheritdoc />
    public partial class ShelfAndQuotes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "rates",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_at_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_rates", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "keeps",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    name = table.Column<string>(type: "TEXT", nullable: false),
                    version = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_at_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_keeps", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "shelf_entries",
                columns: table => new
                {
                    place = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    written_at_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_shelf_entries", x => x.place);
                });

            migrationBuilder.CreateTable(
                name: "quotes",
                columns: table => new
                {
                    id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    number = table.Column<string>(type: "TEXT", nullable: false),
                    job_id = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    issued_at_ticks = table.Column<long>(type: "INTEGER", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_quotes", x => x.id);
                });

            migrationBuilder.CreateIndex(name: "IX_shelf_entries_id", table: "shelf_entries", column: "id", unique: true);
            migrationBuilder.CreateIndex(name: "IX_quotes_job_id", table: "quotes", column: "job_id");
            migrationBuilder.CreateIndex(name: "IX_quotes_number", table: "quotes", column: "number", unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "quotes");
            migrationBuilder.DropTable(name: "shelf_entries");
            migrationBuilder.DropTable(name: "keeps");
            migrationBuilder.DropTable(name: "rates");
        }
    }
}
