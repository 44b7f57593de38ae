/** What a job's row may say of its unit: columns of the file, and of staging and units. */
const facts = [
  ["made", "made_from"],
  ["made", "made_until"],
  ["sold_on", "sold_on"],
  ["delivered_on", "delivered_on"],
  ["installed_on", "installed_on"],
] as const;

export const unitFacts = facts.map(([, name]) => name);

/**
 * SQL for what all rows of a unit say of it that say anything, grouped by unit; nothing where they differ, so that the
 * order of rows never decides.
 * @param present  columns of the file; the others are blank
 */
export function agreedFacts(present: ReadonlySet<string>): string {
  return facts.map(([from, name]) => `${present.has(from) ? agreed(name) : "null::date"} as ${name}`).join(", ");
}

function agreed(fact: string): string {
  const one = fact.startsWith("made_")
    ? "min(made_from) = max(made_from) and min(made_until) = max(made_until)"
    : `min(${fact}) = max(${fact})`;
  return `case when ${one} then min(${fact}) end`;
}

/** SQL for the same of `first`, as far as it is possible: no unit is sold before it is made. */
export function possibleFacts(): string {
  const impossible = (name: string) => name === "made_from" || name === "made_until" || name === "sold_on";
  return unitFacts
    .map((name) =>
      impossible(name)
        ? `case when first.made_from > first.sold_on then null else first.${name} end as ${name}`
        : `first.${name}`,
    )
    .join(", ");
}
