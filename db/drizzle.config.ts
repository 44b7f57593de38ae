import { defineConfig } from "drizzle-kit";

/** For writing migrations (`npm run migration`), which needs no database. Running them is migrate.ts alone. */
export default defineConfig({
  dialect: "postgresql",
  schema: "./db/schema/*.ts",
  out: "./db/migrations",
});
