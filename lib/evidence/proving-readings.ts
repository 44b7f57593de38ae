// The readings that would prove an entry: an example for the check sheet, for demonstration data and for the tests.
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Check, GeneralRange } from "./check";
import { checkOf } from "./checks";
import { type Condition, holds } from "./condition";
import { currentReadings, judgeReadings } from "./current-readings";
import type { EvidenceEntry } from "./entry";

/** Numbered from 1 in the order of the entry's steps; every measurement carries its sheet range, invented where none is known. */
export function provingReadings(entry: EvidenceEntry): readonly Reading[] {
  const wishes = wishesOf(entry);
  const proof = new Map<string, Wish>();
  wish(entry.proof, proof);
  for (let round = 0; round < entry.contradictedBy.length; round++) {
    const readings = readingsFor(wishes, entry);
    const against = contradicting(entry, readings).filter((check) => !proof.has(check));
    if (against.length === 0) return readings;
    for (const check of against) wishes.set(check, { state: "bad", count: 1 });
  }
  return readingsFor(wishes, entry);
}

interface Wish {
  readonly state: "good" | "bad" | "absent" | "open" | { readonly word: string };
  readonly count: number;
}

/** Required checks come out good unless the entry's evidence or proof wants them otherwise. */
function wishesOf(entry: EvidenceEntry): Map<string, Wish> {
  const wishes = new Map<string, Wish>();
  for (const [first] of entry.steps) wishes.set(first, { state: "good", count: 1 });
  for (const { need } of entry.minimumEvidence) if (need.kind === "reading") wish(need.when, wishes);
  wish(entry.proof, wishes);
  if ([...wishes.keys()].some((key) => checkOf(key)?.needs.includes("interlocks")))
    wishes.set("interlocks", { state: "good", count: 1 });
  return wishes;
}

function wish(condition: Condition, wishes: Map<string, Wish>): void {
  switch (condition.is) {
    case "all":
      for (const part of condition.of) wish(part, wishes);
      return;
    case "any": {
      const [first] = condition.of;
      if (first !== undefined) wish(first, wishes);
      return;
    }
    case "word": {
      const [word = ""] = condition.words;
      wishes.set(condition.check, { state: { word }, count: 1 });
      return;
    }
    case "good":
    case "bad":
    case "absent":
    case "open":
      wishes.set(condition.check, { state: condition.is, count: wishes.get(condition.check)?.count ?? 1 });
      return;
    case "three":
      wishes.set(condition.check, { state: wishes.get(condition.check)?.state ?? "good", count: 3 });
      return;
    case "decided":
      if (!wishes.has(condition.check)) wishes.set(condition.check, { state: "good", count: 1 });
      return;
    default:
      return;
  }
}

function contradicting(entry: EvidenceEntry, readings: readonly Reading[]): readonly string[] {
  const current = currentReadings(judgeReadings(readings, [], entry.productType));
  const numbers = new Set(entry.contradictedBy.flatMap(({ when }) => holds(when, current) ?? []));
  return readings.filter(({ number }) => numbers.has(number)).map(({ check }) => check);
}

function readingsFor(wishes: ReadonlyMap<string, Wish>, entry: EvidenceEntry): readonly Reading[] {
  const drafts = [...wishes].flatMap(([key, { state, count }]) => {
    const check = checkOf(key);
    if (check === undefined) throw new RangeError(`entry ${entry.id}: no check named ${key}`);
    return Array.from({ length: count }, (_, index) => draft(check, index === 0 ? state : "good", index, entry));
  });
  return drafts.map((reading, index) => ({ ...reading, number: index + 1 }));
}

function draft(check: Check, state: Wish["state"], index: number, entry: EvidenceEntry): Reading {
  const range = rangeFor(check, entry);
  const outcome = outcomeFor(check, state, range);
  const isMeasured = outcome.kind !== "finding" && outcome.kind !== "code";
  return {
    number: index,
    check: check.key,
    pointA: isMeasured ? `terminal ${index + 1}` : undefined,
    pointB: isMeasured ? `terminal ${((index + 1) % 3) + 1}` : undefined,
    mode: outcome.kind === "finding" ? "observation" : (range.modes?.[0] ?? check.modes[0]),
    outcome,
    power: check.energy,
    isolated: check.needs.includes("isolated") ? true : undefined,
    loadConnected: check.needs.includes("load") ? true : undefined,
    commanded: check.needs.includes("command") ? true : undefined,
    temperatureC: check.needs.includes("temperature") ? Math.min(25, (check.notAboveC ?? 30) - 5) : undefined,
    sheetLow: isMeasured ? range.low : undefined,
    sheetHigh: isMeasured ? range.high : undefined,
    sheetReference: isMeasured ? "model sheet" : undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}

function rangeFor(check: Check, { productType }: EvidenceEntry): Pick<GeneralRange, "low" | "high" | "modes"> {
  return check.general.find(({ productTypes }) => productTypes?.includes(productType) ?? true) ?? { low: 10, high: 20 };
}

function outcomeFor(check: Check, state: Wish["state"], range: Pick<GeneralRange, "low" | "high">): ReadingOutcome {
  if (typeof state === "object") return { kind: "finding", word: state.word };
  if (check.modes[0] === "fault_code") return { kind: "code", code: "F21" };
  const words = Object.entries(check.findings);
  if (words.length > 0) {
    const found = words.find(([, finding]) => finding.state === (state === "good" ? "good" : "bad"));
    return { kind: "finding", word: found?.[0] ?? "" };
  }
  if (state === "open" || (state === "bad" && check.modes[0] === "ohm" && range.high !== undefined))
    return { kind: "open" };
  return { kind: "number", value: valueFor(state, range), unit: check.unit ?? "" };
}

function valueFor(
  state: "good" | "bad" | "absent",
  { low = 0, high = low * 2 }: Pick<GeneralRange, "low" | "high">,
): number {
  if (state === "absent") return 0;
  if (state === "good") return (low + high) / 2;
  return low > 0 ? low / 4 : high * 2;
}
