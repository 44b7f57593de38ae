/** What a person wrote over cells before the load. */
export interface Correction {
  /** Header of the file's column. */
  readonly column: string;
  readonly text: string;
  /** As a spreadsheet numbers them. */
  readonly rows: readonly number[];
}

/** The latest correction of a cell holds. */
export function correctionsWith(before: readonly Correction[], latest: Correction): readonly Correction[] {
  const named = new Set(latest.rows);
  const left = before.map((correction) =>
    correction.column === latest.column
      ? { ...correction, rows: correction.rows.filter((row) => !named.has(row)) }
      : correction,
  );
  return [...left.filter(({ rows }) => rows.length > 0), latest];
}
