import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";

/** Counts everything anew from the rows and says whether any count had been wrong. */
async function main(): Promise<number> {
  const tables = await recount();
  for (const { table, cells, differing } of tables) {
    console.log(
      `${table}: ${cells} rows, ${differing === 0 ? "none differed" : `${differing} differed and are put right`}`,
    );
  }
  return tables.some(({ differing }) => differing > 0) ? 1 : 0;
}

main()
  .catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  })
  .then(async (code) => {
    await closeDatabase();
    process.exitCode = code;
  });
