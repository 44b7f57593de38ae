// How a part failed, as its readings show it: rules of evidence may stand for several ways, such as open, shorted or grounded.
import { failureModeOf } from "@/lib/domain/failure-modes";
import { holds } from "@/lib/evidence/condition";
import type { JudgedReading } from "@/lib/evidence/current-readings";
import { isBad } from "@/lib/evidence/decided";
import type { EvidenceEntry } from "@/lib/evidence/entry";

/** The mode that the proving readings show, of those that the rules know; the first of them where the readings do not tell. */
export function shownMode(entry: EvidenceEntry, current: readonly JudgedReading[]): string | undefined {
  const proving = new Set(holds(entry.proof, current) ?? []);
  const shown = current.filter(({ reading }) => proving.has(reading.number)).flatMap(modesOf);
  return shown.find((mode) => entry.failureModes.includes(mode)) ?? entry.failureModes[0];
}

/** The words of the rules, or the name of the mode where the readings show another than their first. */
export function failureWords(entry: EvidenceEntry, current: readonly JudgedReading[]): string {
  const mode = shownMode(entry, current);
  if (mode === undefined || mode === entry.failureModes[0]) return entry.failure;
  return failureModeOf(mode)?.name.toLowerCase() ?? entry.failure;
}

/** Modes that the reading may stand for, the likeliest first; which of them a part can have, its rules say. */
function modesOf({ reading, judgement }: JudgedReading): readonly string[] {
  if (!isBad(judgement)) return [];
  if (/_to_(ground|shell)$/.test(reading.check)) return ["grounded"];
  switch (judgement.kind) {
    case "finding":
      return [`${reading.check}_${judgement.word}`, judgement.word];
    case "open":
      return ["winding_open", "element_open", "coil_open", "contact_open", "harness_open", "open"];
    case "short":
      return ["winding_shorted", "contact_welded", "grounded"];
    case "below":
      return ["winding_shorted", "low_capacitance", "weak", "out_of_curve", "out_of_band"];
    case "above":
      return ["winding_open", "out_of_curve", "out_of_band"];
    default:
      return [];
  }
}
