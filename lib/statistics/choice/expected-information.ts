/**
 * Bits that an observation is expected to bring about which of several hypotheses holds: their mutual information, which
 * is the doubt before less the doubt expected after.
 * @param weights      how likely each hypothesis is, 0 or more, not all 0; they need not add up to 1
 * @param likelihoods  per hypothesis, in the same order, the chance of each outcome: rows of one length that add up to 1
 * @returns bits, 0 or more, at most the doubt that there is
 * @throws RangeError for an argument outside its range
 * Source: Shannon (1948), Bell System Technical Journal 27, 379-423; as a measure of an experiment, Lindley (1956),
 * Annals of Mathematical Statistics 27, 986-1005.
 * Checked: tests/sheets/expected-information.test.ts, by hand, and by enumeration with separate code.
 */
export function expectedInformation({ weights, likelihoods }: Experiment): number {
  const prior = normalised(weights);
  requireRows(likelihoods, prior.length);
  const outcomes = likelihoods[0]?.length ?? 0;
  let bits = 0;
  for (let outcome = 0; outcome < outcomes; outcome++) {
    const chance = prior.reduce((sum, weight, h) => sum + weight * (likelihoods[h]?.[outcome] ?? 0), 0);
    if (chance === 0) continue;
    prior.forEach((weight, h) => {
      const joint = weight * (likelihoods[h]?.[outcome] ?? 0);
      if (joint > 0) bits += joint * Math.log2(joint / (weight * chance));
    });
  }
  return Math.max(0, bits);
}

export interface Experiment {
  readonly weights: readonly number[];
  readonly likelihoods: readonly (readonly number[])[];
}

/** The weights after one outcome, adding up to 1. @throws RangeError where no hypothesis lets it happen */
export function weightsAfter({ weights, likelihoods }: Experiment, outcome: number): readonly number[] {
  return normalised(weights.map((weight, h) => weight * (likelihoods[h]?.[outcome] ?? 0)));
}

/** Bits of doubt about which hypothesis holds. */
export function doubtOf(weights: readonly number[]): number {
  return normalised(weights).reduce((sum, weight) => (weight > 0 ? sum - weight * Math.log2(weight) : sum), 0);
}

function normalised(weights: readonly number[]): readonly number[] {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(total > 0 && total < Number.POSITIVE_INFINITY) || weights.some((weight) => !(weight >= 0)))
    throw new RangeError(`weights must be 0 or more and not all 0; they are ${weights.join(", ")}`);
  return weights.map((weight) => weight / total);
}

function requireRows(rows: readonly (readonly number[])[], hypotheses: number): void {
  if (rows.length !== hypotheses)
    throw new RangeError(`likelihoods must have a row for each of ${hypotheses} weights; it has ${rows.length}`);
  for (const [h, row] of rows.entries()) {
    const total = row.reduce((sum, chance) => sum + chance, 0);
    if (row.length !== rows[0]?.length || row.some((chance) => !(chance >= 0)) || !(Math.abs(total - 1) < 1e-9))
      throw new RangeError(`likelihoods[${h}] must hold chances that add up to 1; it is ${row.join(", ")}`);
  }
}
