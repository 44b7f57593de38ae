import type { Reading } from "@/lib/domain/reading";
import type { PacketReading } from "../packet";
import { measuredValues } from "./measured-values";
import type { NeutralClaim } from "./neutral-claim-document";

/** One reading as it was taken, with the range it was held against and what that gave. */
export function neutralMeasurement(
  reading: Reading,
  judged: PacketReading,
): NeutralClaim["findings"]["measurements"][number] {
  const { range } = judged;
  return {
    ...measuredValues(reading),
    check: { key: reading.check, name: judged.check },
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
  };
}
