import { closeDatabase } from "@/db/close-database";

/**
 * Runs a command to its end: what went wrong as one sentence, the database closed, and an exit code.
 * @param expected  errors that the sentence tells whole; any other comes with where it arose
 */
export async function runCommand(
  main: () => Promise<number>,
  expected: abstract new (...arguments_: never) => Error = Error,
): Promise<void> {
  try {
    process.exitCode = await main();
  } catch (error) {
    console.error(error instanceof expected ? error.message : error);
    process.exitCode = 1;
  } finally {
    await closeDatabase();
  }
}
