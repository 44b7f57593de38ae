import { neededCautions } from "@/lib/evidence/own-check";
import type { LooseOwn, LooseStep } from "@/lib/sheets/loose-sheet";

/** A check of a company's own, as the editor sends it: the drip tray looked at with the power off. */
export function ownStep(own: Partial<LooseOwn> = {}, step: Partial<LooseStep> = {}): LooseStep {
  const key = own.key ?? "own:drip_tray";
  const power = own.power ?? "off";
  return {
    check: key,
    minutes: "2",
    times: "1",
    note: "",
    cautions: [],
    ...step,
    own: {
      key,
      name: "Drip tray",
      points: "under the tub",
      power,
      mode: "observation",
      low: "",
      high: "",
      source: "",
      mark: "common practice, no source",
      says: "nothing leaks",
      words: [
        { word: "dry", state: "good" },
        { word: "wet", state: "bad" },
        { word: "chewed", state: "outside", cause: "liquid_pest" },
      ],
      cautions: [...neededCautions(power)],
      ...own,
    },
  };
}

/** A measurement instead of a look. */
export function ownMeasure(own: Partial<LooseOwn>, step: Partial<LooseStep> = {}): LooseStep {
  return ownStep(
    {
      key: "own:tray_heater",
      name: "Tray heater",
      mode: "ohm",
      unit: "ohm",
      low: "40",
      high: "60",
      source: "tray sheet, page 2",
      words: [],
      ...own,
    },
    step,
  );
}
