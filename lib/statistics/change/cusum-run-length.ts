import { poissonAtLeast, poissonAtMost, poissonProbability } from "../discrete/poisson";
import { requireNonNegative, requirePositive } from "../require";
import { linearSystem } from "../special/linear-system";

/**
 * Average number of periods until a Poisson CUSUM signals, while counts keep the given mean: the mean time between
 * false alarms at the acceptable mean, the mean delay of detection at a raised one.
 * @param mean      of the counts, above 0
 * @param reference value subtracted (upper chart) each period, above 0; see grid
 * @param threshold the chart signals when its sum reaches it, above 0
 * @param start     0 for a plain chart, threshold / 2 for the usual head start
 * @param side      "upper" sums count − reference, "lower" sums reference − count
 * @param signalAt  "reach" signals at sum >= threshold (Lucas); "exceed" only above it, one lattice step later
 * @returns exact for a reference that is a multiple of 1/d with d at most 100, which all printed tables use
 * @throws RangeError for an argument outside its range, or a reference that is no such multiple: round it first
 * Source: Brook & Evans (1972), Biometrika 59, 539-549; Lucas (1985), Technometrics 27, 129-144.
 * Checked: tests/statistics/change.test.ts (case D01), and by simulation.
 */
export function cusumRunLength(input: CusumRunLengthInput): number {
  const { mean, reference, threshold, start, side, signalAt } = input;
  requirePositive("mean", mean);
  requirePositive("reference", reference);
  requirePositive("threshold", threshold);
  requireNonNegative("start", start);
  const lattice = latticeOf(reference);
  const down = Math.round(reference * lattice);
  const states = signalAt === "reach" ? ceilSafely(threshold * lattice) : floorSafely(threshold * lattice) + 1;
  const begin = Math.floor(start * lattice + 1e-9);
  if (begin >= states) throw new RangeError(`start must lie below threshold (${threshold}); it is ${start}`);
  const row = side === "upper" ? upperRow : lowerRow;
  const matrix = Array.from({ length: states }, (_, from) => {
    const moves = row({ from, states, lattice, down, mean });
    return moves.map((chance, to) => (from === to ? 1 : 0) - chance);
  });
  return linearSystem(matrix, new Array<number>(states).fill(1))[begin] ?? 1;
}

export interface CusumRunLengthInput {
  readonly mean: number;
  readonly reference: number;
  readonly threshold: number;
  readonly start: number;
  readonly side: "upper" | "lower";
  readonly signalAt: "reach" | "exceed";
}

interface RowInput {
  readonly from: number;
  readonly states: number;
  readonly lattice: number;
  readonly down: number;
  readonly mean: number;
}

/** Chances of moving from one state to each other one; what is missing to 1 is the chance of a signal. */
function upperRow({ from, states, lattice, down, mean }: RowInput): number[] {
  const row = new Array<number>(states).fill(0);
  row[0] = poissonAtMost(Math.floor((down - from) / lattice), mean);
  for (let count = 0; from - down + count * lattice < states; count++) {
    const to = from - down + count * lattice;
    if (to > 0) row[to] = poissonProbability(count, mean);
  }
  return row;
}

function lowerRow({ from, states, lattice, down, mean }: RowInput): number[] {
  const row = new Array<number>(states).fill(0);
  row[0] = poissonAtLeast(Math.ceil((from + down) / lattice), mean);
  for (let count = 0; from + down - count * lattice > 0; count++) {
    const to = from + down - count * lattice;
    if (to < states) row[to] = poissonProbability(count, mean);
  }
  return row;
}

function latticeOf(reference: number): number {
  for (let lattice = 1; lattice <= 100; lattice++) {
    const scaled = reference * lattice;
    if (Math.round(scaled) > 0 && Math.abs(scaled - Math.round(scaled)) < 1e-9) return lattice;
  }
  throw new RangeError(`reference must be a multiple of 1/d for a whole d up to 100; it is ${reference}`);
}

function ceilSafely(value: number): number {
  return Math.ceil(value - 1e-9);
}

function floorSafely(value: number): number {
  return Math.floor(value + 1e-9);
}
