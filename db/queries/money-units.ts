import { type SQL, sql } from "drizzle-orm";

/** Which units are looked at: a few by name, or a run of them in the order of their keys. */
export type UnitScope =
  | { readonly kind: "units"; readonly unitIds: readonly string[] }
  /** Above `after` and up to `until`; undefined where there is no end. */
  | { readonly kind: "run"; readonly after: string | undefined; readonly until: string | undefined };

/** Keys as one value. Keys are digits, so nothing in them needs the care that a driver takes of any other list. */
export function keyArray(keys: readonly string[]): SQL {
  return sql`${`{${keys.join(",")}}`}::bigint[]`;
}

/** A condition on a column that holds a unit's key. */
export function inScope(column: SQL, scope: UnitScope): SQL {
  if (scope.kind === "units") return sql`${column} = any(${keyArray(scope.unitIds)})`;
  const from = scope.after === undefined ? sql`true` : sql`${column} > ${scope.after}::bigint`;
  const to = scope.until === undefined ? sql`true` : sql`${column} <= ${scope.until}::bigint`;
  return sql`(${from} and ${to})`;
}
