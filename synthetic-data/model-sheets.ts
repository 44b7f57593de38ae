// Expected values as the invented models' sheets print them. They differ by model on purpose: a good drain pump reads
// 1.5 ohm on one and 110 ohm on another, so that a single limit would be wrong. Kinds of values follow published sheets.
import { type Model, models } from "./models";
import { type RepairStep, repairReadings } from "./repair-readings";

export interface SheetRange {
  readonly check: string;
  readonly low: number;
  readonly high: number;
  readonly unit: string;
  readonly condition: string;
}

export interface PumpSheet {
  readonly winding: readonly [low: number, high: number];
  readonly volts: readonly [low: number, high: number];
  readonly mode: "volt_ac" | "volt_dc";
}

const mains = [110, 126] as const;

/** Drain pumps by model key. */
export const pumpSheets: Readonly<Record<string, PumpSheet>> = {
  BHF20: { winding: [100, 112], volts: mains, mode: "volt_ac" },
  BHF27: { winding: [12, 18], volts: mains, mode: "volt_ac" },
  VTR9: { winding: [1.5, 4], volts: [22, 26], mode: "volt_dc" },
  BHT12: { winding: [10, 20], volts: mains, mode: "volt_ac" },
  DST50: { winding: [12, 18], volts: mains, mode: "volt_ac" },
  VTD5: { winding: [22, 28], volts: mains, mode: "volt_ac" },
  DSW14: { winding: [15, 25], volts: mains, mode: "volt_ac" },
  BHW40: { winding: [22, 28], volts: mains, mode: "volt_ac" },
};

/** Every range that the sheet of the model prints. */
function sheetRanges(model: Model): readonly SheetRange[] {
  const pump = pumpSheets[model.key];
  const ofPump = pump === undefined ? [] : pumpRanges(pump);
  const steps = Object.values(repairReadings[model.productType] ?? {})
    .flat()
    .flatMap(({ before, decisive }) => [...before, decisive])
    .flatMap((step) => stepRange(step));
  const byKey = new Map([...ofPump, ...steps].map((range) => [`${range.check} ${range.condition}`, range]));
  return [...byKey.values()];
}

/** How the sheet calls itself on a reading. */
export function sheetReference(model: Model): string {
  return `${model.root} sheet, test page (invented)`;
}

export const sheetsOfAllModels = models.map((model) => ({ model, ranges: sheetRanges(model) }));

function pumpRanges({ winding: [low, high], volts }: PumpSheet): readonly SheetRange[] {
  return [
    { check: "pump_winding", low, high, unit: "ohm", condition: "" },
    { check: "pump_winding_at_board", low, high, unit: "ohm", condition: "" },
    { check: "pump_voltage", low: volts[0], high: volts[1], unit: "V", condition: "" },
  ];
}

/** Mains voltage and closed contacts need no sheet; the pump's own ranges stand above. */
function stepRange(step: RepairStep): readonly SheetRange[] {
  if (step.kind !== "measure" || step.high <= 1) return [];
  const condition = step.atC === undefined ? "" : `at ${step.atC} C`;
  return [{ check: step.check, low: step.low, high: step.high, unit: step.unit, condition }];
}
