// The words that invite rejection; the list is common practice, no source.
import { expect, test } from "vitest";
import { exclusionWarnings } from "@/lib/evidence/exclusion-warnings";

function warned(correction: string): readonly string[] {
  return exclusionWarnings({ complaint: "", causeNote: "", correction }).map(({ word }) => word);
}

test.each([
  ["Adjusted the door.", "adjusted"],
  ["Cleaned the trap", "cleaned"],
  ["Reset the machine", "reset"],
  ["tightened clamp", "tightened"],
  ["Customer instructed in loading", "customer instructed"],
  ["All checked OK", "checked OK"],
  ["fault is intermittent", "intermittent"],
  ["Could not duplicate the complaint", "could not duplicate"],
  ["CNR", "could not duplicate"],
  ["Machine was installed badly", "installed"],
  ["levelled the cabinet", "levelled"],
  ["Leveled the cabinet", "levelled"],
  ["vent full of lint", "vent"],
  ["straightened the hose", "hose"],
  ["preventive service", "preventive"],
  ["found a coin", "object"],
  ["after the lightning", "lightning"],
])("%s warns of %s", (text, word) => {
  expect(warned(text)).toContain(word);
});

test.each([
  "Replaced pump, drain test pass, code cleared, two cycles.",
  "Hose clear, no suds, no foreign object.",
  "Vent is clear.",
  "Installed a new pump.",
  "Invented, prevented, rehoused",
  "",
])("%j warns of nothing", (text) => {
  expect(warned(text)).toEqual([]);
});

test("each field is named, and the text is not touched", () => {
  const story = Object.freeze({ complaint: "leaks at the hose", causeNote: "", correction: "cleaned and reset" });
  expect(exclusionWarnings(story)).toEqual([
    { word: "hose", field: "complaint", pointsTo: "installation" },
    { word: "cleaned", field: "correction", pointsTo: "maintenance" },
    { word: "reset", field: "correction", pointsTo: "no_fault_found" },
  ]);
});
