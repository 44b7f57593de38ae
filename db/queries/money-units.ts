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

/**
 * Keeps rows of these units, all of which lie in the scope. A run is read from one end to the other and its keys looked up
 * in a table made of the list: going for each key by itself costs the server several times as much, and how it joins a
 * list to a table it decides anew, and not always well, as tables grow.
 */
export function ofUnits(column: SQL, unitIds: readonly string[], scope: UnitScope): SQL {
  if (scope.kind === "units") return sql`${column} = any(${keyArray(unitIds)})`;
  return sql`${inScope(column, scope)} and ${lookedUp(column, unitIds)}`;
}

/** The sum keeps the list away from the index, which would be asked once for each key. */
export function lookedUp(column: SQL, keys: readonly string[]): SQL {
  return sql`${column} + 0 = any(${keyArray(keys)})`;
}
