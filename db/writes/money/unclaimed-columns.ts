import { getTableConfig } from "drizzle-orm/pg-core";
import { unclaimedWork } from "../../schema/money";

const { columns, primaryKeys } = getTableConfig(unclaimedWork);

/** In the order in which rows are copied. What is missing goes by its key; `missing` itself follows from it. */
export const unclaimedColumns = columns
  .map((column) => ({ name: column.name, type: column.getSQLType() }))
  .filter(({ name }) => name !== "missing");

export const unclaimedKey = primaryKeys.flatMap((key) => key.columns.map(({ name }) => name));

/**
 * SQL for `missing` of a row: for releases that look for the words there, which may serve until the last of them is
 * stopped. They see that something is missing, and where it is told.
 */
export function missingOf(row: string): string {
  return `case when ${row}.missing_key is null then '[]'::jsonb else '["What is missing is told on the claim page of the job."]'::jsonb end`;
}
