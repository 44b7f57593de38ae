import { instantInUtc } from "@/lib/calendar/instant";
import type { Reading } from "@/lib/domain/reading";
import type { PacketReading } from "../packet";
import type { NeutralClaim } from "./neutral-claim-document";

/** One reading as it was taken, with the range it was held against and what that gave. */
export function neutralMeasurement(
  reading: Reading,
  judged: PacketReading,
): NeutralClaim["findings"]["measurements"][number] {
  const { range } = judged;
  return {
    number: reading.number,
    check: { key: reading.check, name: judged.check },
    pointA: reading.pointA ?? null,
    pointB: reading.pointB ?? null,
    mode: reading.mode,
    power: reading.power,
    isolated: reading.isolated ?? null,
    loadConnected: reading.loadConnected ?? null,
    commanded: reading.commanded ?? null,
    temperatureC: reading.temperatureC ?? null,
    outcome: { ...reading.outcome },
    expected:
      range === undefined
        ? null
        : {
            low: range.low ?? null,
            high: range.high ?? null,
            unit: range.unit,
            source: range.source,
            mark: range.mark,
          },
    verdict: judged.verdict,
    verdictWords: judged.verdictWords,
    note: reading.note ?? null,
    takenAt: reading.takenAt === undefined ? null : instantInUtc(reading.takenAt),
  };
}
