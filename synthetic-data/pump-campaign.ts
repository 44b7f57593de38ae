import { day } from "@/lib/calendar/day";
import { numberOfDay } from "./day-text";
import { plantedDefects } from "./planted-defects";

const defect = plantedDefects.find(({ key }) => key === "pump_revision");
if (defect === undefined) throw new RangeError("plantedDefects: pump_revision expected");

/** The maker pays for the planted pump revision at any age from this day on: serials by production week. */
export const pumpCampaign = {
  key: "bh_pump_revision_c",
  name: "Drain pump revision C",
  model: defect.model,
  component: defect.component,
  startsOn: day("2026-03-01"),
  startsOnNumber: numberOfDay("2026-03-01"),
  serials: { from: `B${weekOf(defect.from)}0000000`, to: `B${weekOf(defect.to)}9999999` },
} as const;

/** 2024-W09 as serials carry it: 2409. */
function weekOf(text: string): string {
  return `${text.slice(2, 4)}${text.slice(6, 8)}`;
}
