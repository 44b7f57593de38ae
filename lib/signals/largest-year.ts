import { type BlockSums, fewestUnitWeeks } from "./block-sums";
import { baselineWith, type CellParts } from "./build-cell";
import { againstLine } from "./rest-rates";
import type { Line } from "./type-record";
import { ageBandCount } from "./weeks";

/**
 * Largest number of failures expected of a cell in four blocks in a row, without the season, which evens out over a year.
 * @param ownEvents  of the cell itself, which are left out; undefined: none, which gives the most that it can come to
 * Asked of every cell there could be, most of which end here: so it looks at nothing but what it needs.
 * Checked: tests/signals/by-definition.test.ts, by adding up the weeks of each cell.
 */
export function largestYear(
  line: Line,
  parts: Pick<CellParts, "models" | "exposure">,
  ownEvents: BlockSums | undefined,
  blocks: number,
): number {
  const { places } = parts.exposure.held;
  // The four newest blocks: those that are older move down by one.
  let [newest, second, third, fourth] = [0, 0, 0, 0];
  let largest = 0;
  let entry = 0;
  for (let block = 0; block < blocks; block++) {
    const start = entry;
    while (entry < places.length && (places[entry] ?? 0) < (block + 1) * ageBandCount) entry++;
    [fourth, third, second] = [third, second, newest];
    newest = entry === start ? 0 : expectedInBlock(line, parts, ownEvents, block, [start, entry]);
    largest = Math.max(largest, newest + second + third + fourth);
  }
  return largest;
}

function expectedInBlock(
  line: Line,
  parts: Pick<CellParts, "models" | "exposure">,
  ownEvents: BlockSums | undefined,
  block: number,
  [start, end]: readonly [number, number],
): number {
  const span = baselineWith(line, parts, block);
  if (span === undefined) return 0;
  const { places, unitWeeks, before } = parts.exposure.held;
  if ((line.causes?.apartAt[block] ?? []).length > 0) {
    const rates = new Float64Array(ageBandCount);
    const sums = { exposure: parts.exposure.sums, events: ownEvents };
    againstLine(line, { models: parts.models, sums }, block, span, { rates, at: 0 });
    return expectedBy(rates, parts, block, [start, end]);
  }
  const { events, exposure } = line.rest;
  const own = ownEvents?.before;
  const [from, until] = [(span.from - block) * ageBandCount, (span.until - block) * ageBandCount];
  let expected = 0;
  for (let entry = start; entry < end; entry++) {
    const place = places[entry] ?? 0;
    const othersWeeks = (exposure[place] ?? 0) - (before[entry] ?? 0);
    if (othersWeeks < fewestUnitWeeks) continue;
    const ownCount = own === undefined ? 0 : (own[place + until] ?? 0) - (own[place + from] ?? 0);
    expected += ((unitWeeks[entry] ?? 0) * Math.max(0, (events[place] ?? 0) - ownCount)) / othersWeeks;
  }
  return expected;
}

function expectedBy(
  rates: Float64Array,
  { exposure }: Pick<CellParts, "exposure">,
  block: number,
  [start, end]: readonly [number, number],
): number {
  const { places, unitWeeks } = exposure.held;
  let expected = 0;
  for (let entry = start; entry < end; entry++)
    expected += (unitWeeks[entry] ?? 0) * Math.max(0, rates[(places[entry] ?? 0) - block * ageBandCount] ?? 0);
  return expected;
}
