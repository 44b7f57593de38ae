import type { Matching } from "./matching";

const columnsOfFixedLength = /(?:^|\.)(?:serial|part_number|model)$/;

/**
 * How many digits the all-digit values of a column have, where most have the same number and none has more: a shorter one
 * may have lost zeros in front. Columns of running numbers are left out, since those grow.
 */
export function usualLengths(
  columns: Matching["columns"],
  valuesAt: (place: number) => readonly string[],
): Readonly<Record<string, number>> {
  const found: Record<string, number> = {};
  for (const [place, { target }] of columns.entries()) {
    if (target === undefined || !columnsOfFixedLength.test(target)) continue;
    const lengths = valuesAt(place).flatMap((value) => (/^\d+$/.test(value) ? [value.length] : []));
    const most = Math.max(0, ...lengths);
    const share = lengths.filter((length) => length === most).length / Math.max(1, lengths.length);
    if (lengths.length >= 10 && most >= 5 && share >= 0.6) found[target] = most;
  }
  return found;
}
