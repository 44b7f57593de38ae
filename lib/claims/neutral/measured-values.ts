import { instantInUtc } from "@/lib/calendar/instant";
import type { Reading } from "@/lib/domain/reading";

/** A reading as the meter and its user stated it; what it was held against and what that means comes later. */
export function measuredValues(reading: Reading) {
  return {
    number: reading.number,
    pointA: reading.pointA ?? null,
    pointB: reading.pointB ?? null,
    mode: reading.mode,
    power: reading.power,
    isolated: reading.isolated ?? null,
    loadConnected: reading.loadConnected ?? null,
    commanded: reading.commanded ?? null,
    temperatureC: reading.temperatureC ?? null,
    outcome: { ...reading.outcome },
    note: reading.note ?? null,
    takenAt: reading.takenAt === undefined ? null : instantInUtc(reading.takenAt),
  };
}
