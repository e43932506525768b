import { defineConfig } from "prisma/config";

// Only `prisma generate` reads this. Migrations are written by prisma/make-migration.mjs and applied by
// the bot when it starts, so the command line tool never needs a database.
export default defineConfig({ schema: "prisma/schema.prisma" });
