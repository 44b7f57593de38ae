// The readings of a job, each judged, and of those taken again only the last that proves something: a hose that was
// straightened and read again is clear.
import type { ProductType } from "@/lib/domain/product-type";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import { isDecided } from "./decided";
import { type Judgement, type JudgingContext, judgeReading } from "./judge-reading";

export interface JudgedReading {
  readonly reading: Reading;
  readonly judgement: Judgement;
}

/** Every reading with its judgement, in the order of their numbers. */
export function judgeReadings(
  readings: readonly Reading[],
  ranges: readonly ExpectedRange[],
  productType: ProductType | undefined,
): readonly JudgedReading[] {
  const inOrder = [...readings].sort((a, b) => a.number - b.number);
  const context: JudgingContext = {
    ranges,
    productType,
    interlocks: interlocksOf(inOrder),
    commanded: commandOf(inOrder),
  };
  return inOrder.map((reading) => ({ reading, judgement: judgeReading(reading, context) }));
}

/** Per check and pair of points the last that decides something; one that decides nothing stays only where none does. */
export function currentReadings(judged: readonly JudgedReading[]): readonly JudgedReading[] {
  const current = new Map<string, JudgedReading>();
  for (const entry of judged) {
    const place = placeOf(entry.reading);
    const held = current.get(place);
    if (held === undefined || isDecided(entry.judgement) || !isDecided(held.judgement)) current.set(place, entry);
  }
  return [...current.values()].sort((a, b) => a.reading.number - b.reading.number);
}

function placeOf({ check, outcome, pointA, pointB }: Reading): string {
  return outcome.kind === "finding" || outcome.kind === "code" ? check : [check, pointA ?? "", pointB ?? ""].join("\n");
}

function interlocksOf(readings: readonly Reading[]): JudgingContext["interlocks"] {
  const word = lastWord(readings, "interlocks");
  return word === "pass" || word === "fail" ? word : "not_read";
}

function commandOf(readings: readonly Reading[]): boolean | undefined {
  const word = lastWord(readings, "drain_command");
  return word === undefined ? undefined : word === "commanded";
}

function lastWord(readings: readonly Reading[], check: string): string | undefined {
  const outcome = readings.findLast(
    (reading) => reading.check === check && reading.outcome.kind === "finding",
  )?.outcome;
  return outcome?.kind === "finding" ? outcome.word : undefined;
}
