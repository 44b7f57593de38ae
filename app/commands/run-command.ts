import process from "node:process";
import { closeDatabase } from "@/db/close-database";

export interface CommandSetting {
  /** Errors that their sentence tells whole; any other comes with where it arose. */
  readonly expected?: abstract new (
    ...arguments_: never
  ) => Error;
  /** Whether the command ends at once when the site that started it does. */
  readonly endsWithSite?: boolean;
}

/** Runs a command to its end: what went wrong as one sentence, the database closed, and an exit code. */
export async function runCommand(
  main: () => Promise<number>,
  { expected = Error, endsWithSite = false }: CommandSetting = {},
): Promise<void> {
  const end = () => process.exit(1);
  if (endsWithSite) process.once("disconnect", end);
  try {
    process.exitCode = await main();
  } catch (error) {
    console.error(error instanceof expected ? error.message : error);
    process.exitCode = 1;
  } finally {
    await closeDatabase();
    process.off("disconnect", end);
    if (process.connected) process.disconnect(); // the line to the site would keep it running
  }
}
