// What the browser's walks say to a step, as the readings that the phone makes of it.
import type { Told } from "@/e2e/no-drain-walks";
import type { ExpectedRange, Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { shippedSheets } from "@/lib/sheets/shipped-sheets";
import { typedValue } from "@/lib/sheets/typed-value";
import { componentsBehind, type VisitPlan, visitPlan } from "@/lib/sheets/visit-plan";

/** The plan of the ten walks. */
export function noDrainPlan(): VisitPlan {
  const sheets = shippedSheets().filter(({ productType }) => productType === "front_load_washer");
  const behind = componentsBehind("front_load_washer", "will_not_drain", sheets);
  return visitPlan({
    productType: "front_load_washer",
    symptom: "will_not_drain",
    sheets: sheets.filter(({ component }) => behind.includes(component)),
  });
}

/** What the sheet of the walks' model prints. */
export const modelRanges: readonly ExpectedRange[] = ["pump_winding", "pump_winding_at_board"].map((check) => ({
  check,
  low: 12,
  high: 18,
  unit: "ohm",
  condition: undefined,
  source: "the model's sheet (invented)",
  mark: "published",
}));

/** Undefined where the step is passed over. */
export function readingTold(check: Check, told: Told): Reading | undefined {
  const outcome = outcomeTold(check, told);
  if (outcome === undefined) return undefined;
  const isWord = outcome.kind === "finding" || outcome.kind === "code";
  return {
    number: 0,
    check: check.key,
    pointA: isWord ? undefined : "a",
    pointB: isWord ? undefined : "b",
    mode: outcome.kind === "finding" ? "observation" : check.modes[0],
    outcome,
    power: check.energy,
    isolated: check.needs.includes("isolated") ? !("stillConnected" in told) : undefined,
    loadConnected: "load" in told ? told.load : undefined,
    commanded: "commanded" in told ? told.commanded : undefined,
    temperatureC: undefined,
    sheetLow: undefined,
    sheetHigh: undefined,
    sheetReference: undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}

function outcomeTold({ key, findings, unit }: Check, told: Told): ReadingOutcome | undefined {
  if ("skip" in told) return undefined;
  if ("none" in told) return { kind: "finding", word: "none" };
  if ("code" in told) return { kind: "code", code: told.code };
  if ("state" in told) return states[told.state];
  if ("number" in told) {
    const typed = typedValue(told.number);
    if (typed.kind !== "value") throw new Error(`${key}: “${told.number}” is no number`);
    return { kind: "number", value: typed.value, unit: unit ?? "" };
  }
  const meant = Object.entries(findings).filter(([, { means }]) =>
    means.toLowerCase().startsWith(told.word.toLowerCase()),
  );
  const [word] = meant.map(([each]) => each);
  if (word === undefined || meant.length > 1) throw new Error(`${key}: “${told.word}” means ${meant.length} findings`);
  return { kind: "finding", word };
}

const states: Readonly<Record<Extract<Told, { readonly state: unknown }>["state"], ReadingOutcome>> = {
  "Open (OL)": { kind: "open" },
  Short: { kind: "short" },
  "No reading": { kind: "no_reading" },
};
