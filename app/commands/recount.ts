import { recount } from "@/db/writes/recount";
import { runCommand } from "./run-command";

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

await runCommand(main);
