import { DrizzleQueryError } from "drizzle-orm/errors";
import { DatabaseError } from "pg";

/**
 * Takes the values of rows out of an error of the database, which may name a customer: errors end in logs, and logs are read
 * by more people than the rows are. Statement, constraint, table and code stay.
 */
export function withoutValues(error: unknown): unknown {
  for (let at = error; at instanceof Error; at = at.cause) {
    if (at instanceof DrizzleQueryError) {
      reword(at, `Failed query: ${at.query}`);
      at.params = [];
    }
    if (at instanceof DatabaseError) {
      reword(at, at.message.replace(/(: )"[\s\S]*"$/, "$1…"));
      at.detail = undefined;
      at.where = undefined;
      at.internalQuery = undefined;
    }
  }
  return error;
}

/** The stack begins with the message as it was. */
function reword(error: Error, message: string): void {
  if (error.stack !== undefined) error.stack = error.stack.replace(error.message, () => message);
  error.message = message;
}
