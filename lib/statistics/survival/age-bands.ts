import { type AgeFlows, ageFlows, type LifeSource } from "./age-flows";
import type { LifeTableBand } from "./life-table";

/**
 * Cuts lives into age bands: counts for a life table, and the time lived in each band for its hazard.
 * @param source  rows, columns or flows
 * @param breaks  ages where bands begin and end: at least two, ascending, 0 or more; failures outside them are left out
 * @returns one band between each two breaks; a failure on a break belongs to the band that begins there
 * @throws RangeError for breaks that do not ascend
 * Checked: tests/statistics/survival/age-bands.test.ts, by the definition applied to each row.
 */
export function ageBands(source: LifeSource, breaks: readonly number[]): AgeBand[] {
  if (breaks.length < 2) throw new RangeError(`breaks must hold at least two ages; it holds ${breaks.length}`);
  breaks.forEach((age, i) => {
    if (!(age >= 0 && age > (breaks[i - 1] ?? -1) && age < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`breaks must be finite, 0 or more and ascending; breaks[${i}] is ${age}`);
    }
  });
  const flows = ageFlows(source);
  return breaks.slice(1).map((end, i) => bandBetween(flows, breaks[i] ?? 0, end));
}

export interface AgeBand extends LifeTableBand {
  /** Time lived within the band by all lives together, in the unit of age. */
  readonly exposure: number;
}

function bandBetween({ ages, entered, events, lost }: AgeFlows, start: number, end: number): AgeBand {
  const band = { start, end, atStart: 0, entered: 0, failed: 0, lost: 0, exposure: 0 };
  ages.forEach((age, i) => {
    const arriving = entered[i] ?? 0;
    const failing = events[i] ?? 0;
    const losing = lost[i] ?? 0;
    const within = age >= start && age < end;
    if (age <= start) band.atStart += arriving;
    else if (within) band.entered += arriving;
    if (age < start) band.atStart -= failing + losing;
    else if (within) {
      band.failed += failing;
      band.lost += losing;
    }
    // Everybody lives from entry to exit: the part of each exit age inside the band, less that of each entry age.
    band.exposure += (failing + losing - arriving) * Math.max(0, Math.min(age, end) - start);
  });
  return band;
}
