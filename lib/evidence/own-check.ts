// A company's own check as the judging looks at it. It follows the same reading rules as the catalogue's, and the rules of
// evidence know nothing of it: it can name a cause outside the part, and never proves that a part failed.
import type { OwnCheck } from "@/lib/domain/own-check";
import type { MeterMode, PowerState, Reading } from "@/lib/domain/reading";
import { type CautionKey, cautions } from "./cautions";
import type { Check, Finding } from "./check";
import { checkOf } from "./checks";
import { cautionsOfState, decides } from "./checks/make-check";

/** The check of a reading: the company's own as it stood then, or the catalogue's. */
export function checkOfReading({ own, check }: Pick<Reading, "own" | "check">): Check | undefined {
  return own === undefined ? checkOf(check) : checkOfOwn(own);
}

export function checkOfOwn(own: OwnCheck): Check {
  const { key, name, points, power, mode, unit, low, high, source, mark, says } = own;
  const hasRange = unit !== undefined && (low !== undefined || high !== undefined);
  return {
    key,
    name,
    points,
    modes: [mode],
    unit,
    energy: power,
    needs: needsOf(mode),
    expect: hasRange
      ? `${low ?? ""}${high === undefined ? " or more" : ` to ${high}`} ${unit}`.trim()
      : "as the sheet says",
    proves: says,
    findings: findingsOf(own),
    general: hasRange ? [decides(low, high, unit, source, mark)] : [],
    cautions: [...new Set([...neededCautions(power), ...own.cautions.filter(isCaution)])],
    laterToo: power === "off",
  };
}

/** Cautions without which a check in this state is never shown. */
export function neededCautions(power: PowerState): readonly CautionKey[] {
  return [...cautionsOfState(power), "sheet_decides"];
}

export function isCaution(key: string): key is CautionKey {
  return Object.hasOwn(cautions, key);
}

function needsOf(mode: MeterMode): Check["needs"] {
  if (mode === "ohm" || mode === "continuity") return ["isolated"];
  return mode === "volt_ac" || mode === "volt_dc" ? ["load"] : [];
}

function findingsOf({ words }: OwnCheck): Readonly<Record<string, Finding>> {
  return Object.fromEntries(
    words.map(({ word, state, cause }): [string, Finding] => [
      word,
      cause === undefined ? { means: word, state } : { means: word, state, cause },
    ]),
  );
}
