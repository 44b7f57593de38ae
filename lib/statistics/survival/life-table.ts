import { requireNonNegative, requireWholeNumber } from "../require";

/**
 * Actuarial life table: survival at the end of each age band from counts alone, when exact ages are not known.
 * Lives lost within a band count as watched for half of it, and so do those that entered within it.
 * @param bands  consecutive from the first age, each starting where the one before ended
 * @returns one row per band, up to the first band in which nobody was watched: survival cannot be carried across it,
 *          and `complete` is false. A life table knows no limits beyond its Greenwood error; `survivalLimits` makes them.
 * @throws RangeError for bands that cannot be
 * Source: Cutler and Ederer (1958), J. Chronic Diseases 8, 699-712; error Greenwood (1926).
 * Checked: tests/statistics/survival/life-table.test.ts, the printed example and by hand.
 */
export function lifeTable(bands: readonly LifeTableBand[]): LifeTable {
  bands.forEach(requireBand);
  const rows: LifeTableRow[] = [];
  let survival = 1;
  let logVariance = 0;
  for (const band of bands) {
    const effective = band.atStart + (band.entered - band.lost) / 2;
    if (!(effective > 0)) return { rows, complete: false };
    const failedShare = Math.min(1, band.failed / effective);
    survival *= 1 - failedShare;
    logVariance += band.failed / (effective * Math.max(0, effective - band.failed));
    const standardError = survival === 0 ? 0 : survival * Math.sqrt(logVariance);
    const width = band.end - band.start;
    const hazard = (2 * failedShare) / (width * (2 - failedShare));
    rows.push({ ...band, effective, failedShare, hazard, survivalAtEnd: survival, standardError });
  }
  return { rows, complete: true };
}

/** What happened between two ages: start included, end not. */
export interface LifeTableBand {
  readonly start: number;
  /** Above start; Infinity for an open last band, whose hazard is then 0 per unit of age. */
  readonly end: number;
  /** Lives watched when the band begins. */
  readonly atStart: number;
  /** Lives whose watching began within the band. */
  readonly entered: number;
  readonly failed: number;
  /** Lives no longer watched, though sound (lost and withdrawn together). */
  readonly lost: number;
}

export interface LifeTableRow extends LifeTableBand {
  /** Lives exposed to failure through the band, with halves for those who came or went. */
  readonly effective: number;
  /** Failed per effective life. */
  readonly failedShare: number;
  /** Actuarial hazard at the middle of the band, per unit of age. */
  readonly hazard: number;
  readonly survivalAtEnd: number;
  /** Greenwood standard error of survivalAtEnd; 0 once survival is 0, where it cannot be estimated. */
  readonly standardError: number;
}

export interface LifeTable {
  readonly rows: readonly LifeTableRow[];
  readonly complete: boolean;
}

function requireBand(band: LifeTableBand, i: number, bands: readonly LifeTableBand[]): void {
  requireNonNegative(`bands[${i}].start`, band.start);
  if (!(band.end > band.start)) {
    throw new RangeError(`bands[${i}].end must be above its start ${band.start}; it is ${band.end}`);
  }
  const before = bands[i - 1];
  if (before !== undefined && before.end !== band.start) {
    throw new RangeError(`bands[${i}].start must be ${before.end}, where the band before ends; it is ${band.start}`);
  }
  for (const field of ["atStart", "entered", "failed", "lost"] as const) {
    requireWholeNumber(`bands[${i}].${field}`, band[field]);
  }
  if (band.failed + band.lost > band.atStart + band.entered) {
    throw new RangeError(
      `bands[${i}] loses more lives than it has: ${band.failed} failed and ${band.lost} lost of ${band.atStart + band.entered}`,
    );
  }
}
