// Which range a reading is held against. The sheet's range noted with the reading comes first, then the model's or the
// part's, then a general one; a sensor's range holds only at its own temperature.
import type { ProductType } from "@/lib/domain/product-type";
import type { ExpectedRange, Reading, SourceMark } from "@/lib/domain/reading";
import type { Check, GeneralRange } from "./check";
import { partRanges, readReference } from "./part-ranges";
import { temperatureIn } from "./temperature-in";

export interface JudgedRange {
  readonly low: number | undefined;
  readonly high: number | undefined;
  readonly unit: string;
  readonly basis: "noted with the reading" | "model" | "general";
  /** Too wide to decide anything but an open or shorted part. */
  readonly screensOnly: boolean;
  readonly condemnsBelow: number | undefined;
  readonly source: string;
  readonly mark: SourceMark;
}

export interface RangeChoice {
  readonly ranges: readonly ExpectedRange[];
  readonly productType: ProductType | undefined;
}

/** Undefined where nothing gives a range for this reading under its conditions. */
export function expectedRange(reading: Reading, check: Check, choice: RangeChoice): JudgedRange | undefined {
  return (
    notedRange(reading, check) ??
    modelRange(reading, check, choice.ranges) ??
    generalRange(reading, check, choice.productType)
  );
}

/**
 * Every range that the reading may have to meet: one, or none, but where the model came with one of several parts and nobody
 * has said which is fitted. Then each of theirs.
 */
export function possibleRanges(
  reading: Reading,
  check: Check,
  choice: RangeChoice,
): readonly [JudgedRange | undefined, ...JudgedRange[]] {
  const noted = notedRange(reading, check);
  const [first, ...others] = noted === undefined ? partRanges(check, choice.ranges).map(ofModel) : [noted];
  return first === undefined ? [expectedRange(reading, check, choice)] : [first, ...others];
}

function notedRange(reading: Reading, check: Check): JudgedRange | undefined {
  const { sheetLow: low, sheetHigh: high } = reading;
  if (low === undefined && high === undefined) return undefined;
  const unit = reading.outcome.kind === "number" ? reading.outcome.unit : (check.unit ?? "");
  const { source, mark } = readReference(reading.sheetReference ?? "sheet range noted with the reading");
  return {
    low,
    high,
    unit,
    basis: "noted with the reading",
    screensOnly: false,
    condemnsBelow: undefined,
    source,
    mark,
  };
}

function modelRange(reading: Reading, check: Check, ranges: readonly ExpectedRange[]): JudgedRange | undefined {
  const range = ranges.find(
    (candidate) => candidate.check === check.key && holdsAt(temperatureIn(candidate.condition), reading, check),
  );
  return range === undefined ? undefined : ofModel(range);
}

function ofModel({ low, high, unit, source, mark }: ExpectedRange): JudgedRange {
  return { low, high, unit, basis: "model", screensOnly: false, condemnsBelow: undefined, source, mark };
}

function generalRange(reading: Reading, check: Check, productType: ProductType | undefined): JudgedRange | undefined {
  const range = check.general.find((candidate) => fits(candidate, reading, check, productType));
  if (range === undefined) return undefined;
  const { low, high, unit, screensOnly, condemnsBelow, source, mark } = range;
  return { low, high, unit, basis: "general", screensOnly, condemnsBelow, source, mark };
}

function fits(range: GeneralRange, reading: Reading, check: Check, productType: ProductType | undefined): boolean {
  if (range.modes !== undefined && !range.modes.includes(reading.mode)) return false;
  if (range.productTypes !== undefined && (productType === undefined || !range.productTypes.includes(productType)))
    return false;
  return holdsAt(range.atC, reading, check);
}

/** A sensor's range without a temperature is no range; with one it holds within a degree and a half, about 5 % of an NTC's ohms. */
const sameTemperatureC = 1.5;

function holdsAt(rangeAtC: number | undefined, reading: Reading, check: Check): boolean {
  if (!check.needs.includes("temperature") || check.modes.includes("continuity")) return true;
  if (rangeAtC === undefined || reading.temperatureC === undefined) return false;
  return Math.abs(rangeAtC - reading.temperatureC) <= sameTemperatureC;
}
