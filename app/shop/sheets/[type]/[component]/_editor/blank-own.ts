import { neededCautions } from "@/lib/evidence/own-check";
import type { LooseOwn, LooseStep } from "@/lib/sheets/loose-sheet";

/** A new check of the company's own, with nothing in it but the safest state. @param taken  keys that the sheet has */
export function blankOwn(taken: ReadonlySet<string>): LooseStep {
  const random = [...crypto.getRandomValues(new Uint8Array(6))].map((byte) => byte.toString(16).padStart(2, "0"));
  const key = `own:${random.join("")}`;
  if (taken.has(key)) return blankOwn(taken);
  const own: LooseOwn = {
    key,
    name: "",
    points: "",
    power: "off",
    mode: "observation",
    low: "",
    high: "",
    source: "",
    mark: "common practice, no source",
    says: "",
    words: [
      { word: "", state: "good" },
      { word: "", state: "bad" },
    ],
    cautions: [...neededCautions("off")],
  };
  return { check: key, own, minutes: "3", times: "1", note: "", cautions: [] };
}
