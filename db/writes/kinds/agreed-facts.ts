import { unitFacts } from "./unit-facts";

/** Columns of staging and units for what a job's row may say of its unit. */
export const factColumns = unitFacts.flatMap(({ columns }) => columns);

/**
 * SQL for what all rows of a unit say of it that say anything, grouped by unit; nothing where they differ, so that the
 * order of rows never decides.
 * @param present  columns of the file; the others are blank
 */
export function agreedFacts(present: ReadonlySet<string>): string {
  const agreed = unitFacts.flatMap(({ from, columns }) => {
    const one = columns.map((name) => `min(${name}) = max(${name})`).join(" and ");
    return columns.map(
      (name) => `${present.has(from) ? `case when ${one} then min(${name}) end` : "null::date"} as ${name}`,
    );
  });
  return agreed.join(", ");
}

const impossible: readonly string[] = ["made_from", "made_until", "sold_on"];

/** SQL for the same of `first`, as far as it is possible: no unit is sold before it is made. */
export function possibleFacts(): string {
  return factColumns
    .map((name) =>
      impossible.includes(name)
        ? `case when first.made_from > first.sold_on then null else first.${name} end as ${name}`
        : `first.${name}`,
    )
    .join(", ");
}
