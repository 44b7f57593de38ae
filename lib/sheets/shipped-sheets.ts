// The sheets as they come with the program: made from the rules of evidence, so that a check that a claim needs is on
// the sheet, and nothing is kept in two places.

import { components } from "@/lib/domain/components";
import type { PhotoSubject } from "@/lib/domain/job";
import { type ProductType, productTypeKeys } from "@/lib/domain/product-type";
import { checkOf } from "@/lib/evidence/checks";
import { entriesFor } from "@/lib/evidence/entries";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { checksOf } from "./branches";
import { checkMinutes } from "./check-minutes";
import { type Sheet, type SheetStep, sheetKey } from "./sheet";

/** The sheet of that appliance and component as shipped; undefined where there are no rules for it. */
export function shippedSheet(productType: ProductType, component: string): Sheet | undefined {
  return byKey.get(sheetKey({ productType, component }));
}

/** All of them, by appliance and then in the order of the catalogue of components. */
export function shippedSheets(): readonly Sheet[] {
  return [...byKey.values()];
}

/** The checks of these entries in the order in which they are done: what an entry requires, then what its proof and its exclusions speak of. */
export function checksOfEntries(entries: readonly EvidenceEntry[]): readonly string[] {
  const required = mergeInOrder(entries.map(({ steps }) => withEnablers(steps.flat())));
  const spoken = entries.flatMap((entry) => [
    ...entry.minimumEvidence.flatMap(({ need }) => (need.kind === "reading" ? checksOf(need.when) : [])),
    ...checksOf(entry.proof),
    ...entry.notCoveredIf.flatMap(({ when }) => checksOf(when)),
  ]);
  return [...new Set([...required, ...withEnablers(spoken)])].filter((key) => checkOf(key) !== undefined);
}

function sheetOf(productType: ProductType, component: string): Sheet | undefined {
  const entries = entriesFor(productType, component);
  if (entries.length === 0) return undefined;
  const pictures = picturesOf(entries);
  const steps = checksOfEntries(entries).flatMap((key): SheetStep[] => {
    const check = checkOf(key);
    if (check === undefined) return [];
    return [
      {
        check: key,
        own: undefined,
        minutes: checkMinutes(check),
        times: inPairs.has(key) ? 3 : 1,
        photo: pictures(key),
        note: "",
        cautions: [],
        after: undefined,
      },
    ];
  });
  return { productType, component, version: 1, steps };
}

/** Read on three pairs of terminals. */
const inPairs: ReadonlySet<string> = new Set(["motor_winding", "circulation_winding", "compressor_winding"]);

/** Zero volts say something only where the step is commanded and the interlocks pass: those are asked before. */
function withEnablers(keys: readonly string[]): readonly string[] {
  return keys.flatMap((key) => {
    const needs = checkOf(key)?.needs ?? [];
    const interlocks = needs.includes("interlocks") ? ["interlocks"] : [];
    return key === "pump_voltage" ? ["drain_command", ...interlocks, key] : [...interlocks, key];
  });
}

/** Lists that share members become one, each list's own order kept as far as the others let it. */
function mergeInOrder(lists: readonly (readonly string[])[]): readonly string[] {
  const merged: string[] = [];
  for (const list of lists) {
    let at = 0;
    for (const key of list) {
      const known = merged.indexOf(key);
      if (known >= 0) at = Math.max(at, known + 1);
      else merged.splice(at++, 0, key);
    }
  }
  return merged;
}

/** Which of the pictures that the entries want belongs to a check. */
function picturesOf(entries: readonly EvidenceEntry[]): (check: string) => PhotoSubject | undefined {
  const wanted = new Set(
    entries.flatMap(({ minimumEvidence }) =>
      minimumEvidence.flatMap(({ need }) => (need.kind === "photo" || need.kind === "photos" ? need.subjects : [])),
    ),
  );
  return (check) => (shownAt[check] ?? []).find((subject) => wanted.has(subject));
}

const shownAt: Readonly<Record<string, readonly PhotoSubject[]>> = {
  fault_code: ["fault_code"],
  trap: ["drain_path", "foreign_object"],
  impeller: ["drain_path", "failed_part"],
  hose: ["kinked_hose"],
  suds: ["suds"],
  connector_reseat: ["connector"],
  connector_condition: ["connector"],
  board_condition: ["board_front"],
};

const byKey: ReadonlyMap<string, Sheet> = new Map(
  productTypeKeys.flatMap((productType) =>
    components.flatMap(({ key: component }): [string, Sheet][] => {
      const sheet = sheetOf(productType, component);
      return sheet === undefined ? [] : [[sheetKey(sheet), sheet]];
    }),
  ),
);
