import type { JobRecord } from "@/lib/domain/job";
import type { ExpectedRange, Reading } from "@/lib/domain/reading";
import { type JudgedReading, judgeReadings } from "@/lib/evidence/current-readings";
import type { Judgement } from "@/lib/evidence/judge-reading";
import { checkOfReading } from "@/lib/evidence/own-check";
import type { PacketRange, PacketReading } from "./packet";

/** Every reading of the job in its order, with the range it was held against and what that gave. */
export function packetReadings(
  { readings, unit }: JobRecord,
  ranges: readonly ExpectedRange[],
): readonly PacketReading[] {
  return judgeReadings(readings, ranges, unit.productType).map(packetReading);
}

function packetReading({ reading, judgement }: JudgedReading): PacketReading {
  const check = checkOfReading(reading);
  const { number, mode, outcome, power, pointA, pointB } = reading;
  const points = [pointA, pointB].filter((point) => point !== undefined).join(" to ");
  return {
    number,
    check: check?.name ?? reading.check,
    points,
    mode,
    outcome,
    power,
    conditions: conditionsOf(reading),
    range: rangeOf(judgement),
    verdict: judgement.kind,
    verdictWords: verdictWords(judgement),
    cautions: check?.cautions ?? [],
    takenAt: reading.takenAt,
  };
}

function conditionsOf({ isolated, loadConnected, commanded, temperatureC, note }: Reading): readonly string[] {
  return [
    ...stated(isolated, "part disconnected", "part still connected"),
    ...stated(loadConnected, "load connected", "load not connected"),
    ...stated(commanded, "step commanded", "step not commanded"),
    ...(temperatureC === undefined ? [] : [`at ${temperatureC} °C`]),
    ...(note === undefined ? [] : [note]),
  ];
}

function stated(value: boolean | undefined, yes: string, no: string): readonly string[] {
  return value === undefined ? [] : [value ? yes : no];
}

function rangeOf(judgement: Judgement): PacketRange | undefined {
  if (!("range" in judgement) || judgement.range === undefined) return undefined;
  const { low, high, unit, source, mark } = judgement.range;
  return { low, high, unit, source, mark };
}

function verdictWords(judgement: Judgement): string {
  switch (judgement.kind) {
    case "proves_nothing":
      return judgement.why;
    case "finding":
      return judgement.finding.means;
    case "code":
      return `Code ${judgement.code}`;
    case "inside":
      return "Inside its range";
    case "below":
      return `Below its range by ${rounded(judgement.by)} ${judgement.range.unit}`;
    case "above":
      return `Above its range by ${rounded(judgement.by)} ${judgement.range.unit}`;
    case "open":
      return judgement.good ? "Open, as it should be" : "Open";
    case "short":
      return judgement.good ? "Closed, as it should be" : "Short";
  }
}

/** Differences of decimals carry noise in their last digits. */
function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
