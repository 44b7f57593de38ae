import { defineConfig } from "drizzle-kit";

/** Used by contributors only, to write a migration from a changed schema; at run time db/migrate.ts applies the written files. */
export default defineConfig({ dialect: "postgresql", schema: "./db/schema/all.ts", out: "./db/migrations" });
