// The troubles planted in the invented company, as places in which a signal should appear, and when they began to tell.
import type { ProductType } from "@/lib/domain/product-type";
import type { CellKey, WordKind } from "@/lib/signals/signal-record";
import { weekOf } from "@/lib/signals/weeks";
import { addedBetween, addedTroubles, concerns, decoy } from "@/synthetic-data/added-troubles";
import { componentProfiles } from "@/synthetic-data/component-profiles";
import { lifeInUnit, livesOf } from "@/synthetic-data/hazards";
import { makers, modelNumber, modelOf, models } from "@/synthetic-data/models";
import { plantedDefects } from "@/synthetic-data/planted-defects";
import { wornDays } from "@/synthetic-data/season";
import type { CompanyUnit } from "./signals-company";

export interface Target {
  readonly key: string;
  readonly kind: WordKind;
  readonly word: string;
  readonly model: string;
  readonly modelNumber: string;
  readonly maker: string;
  readonly productType: ProductType;
}

export const targets: readonly Target[] = [
  ...plantedDefects.map(({ key, model, component }) => targetOf(key, model, "component", component)),
  ...addedTroubles.map(({ key, model, what }) =>
    what.kind === "failure"
      ? targetOf(key, model, "component", what.component)
      : targetOf(key, model, "symptom", what.rate.symptom),
  ),
];

/** Models that fail more often in one component from the first: no planted trouble, but no false signal either. */
const weaknesses = models.flatMap((model) =>
  Object.keys(model.weaknesses).map((component) => targetOf("weakness", model.key, "component", component)),
);

export const decoyTarget = targetOf("decoy", decoy.model, "component", decoy.component);

/** Whether the story of a signal is that of a planted trouble: same word, kind of machine and maker. */
export function tellsOf(target: Target, key: CellKey): boolean {
  return (
    target.kind === key.kind &&
    target.word === key.word &&
    target.productType === key.productType &&
    target.maker === key.maker &&
    (key.model === undefined || key.model === target.modelNumber)
  );
}

/** A component that fails too often shows in the symptoms that it gives, too. */
export function isTrue(key: CellKey): boolean {
  return [...targets, ...weaknesses].some(
    (target) =>
      tellsOf(target, key) ||
      (key.kind === "symptom" &&
        target.kind === "component" &&
        componentProfiles[target.word]?.symptoms.includes(key.word) === true &&
        tellsOf({ ...target, kind: "symptom", word: key.word }, key)),
  );
}

/** Extra failures that each trouble is expected to bring, by week from the record's first. */
export function expectedExtra(
  units: readonly CompanyUnit[],
  { firstWeek, lastWeek }: { readonly firstWeek: number; readonly lastWeek: number },
): ReadonlyMap<string, Float64Array> {
  const byTarget = new Map(targets.map(({ key }) => [key, new Float64Array(lastWeek - firstWeek + 1)]));
  for (const { unit } of units) {
    for (const { key, upTo } of growthIn(unit)) {
      const weeks = byTarget.get(key) ?? new Float64Array();
      const [from, until] = [
        Math.max(weekOf(unit.observedFrom), firstWeek),
        Math.min(weekOf(unit.observedTo), lastWeek),
      ];
      for (let week = from; week <= until; week++) {
        const end = Math.min(7 * (week + 1) + 4, unit.observedTo);
        const start = Math.max(7 * week + 4, unit.observedFrom);
        if (end > start) weeks[week - firstWeek] = (weeks[week - firstWeek] ?? 0) + upTo(end) - upTo(start);
      }
    }
  }
  return byTarget;
}

interface Growth {
  readonly key: string;
  readonly upTo: (on: number) => number;
}

/** Extra failures of one unit up to a day; renewals are left aside, which matters little to when a trouble begins. */
function growthIn(unit: CompanyUnit["unit"]): Growth[] {
  const grown: Growth[] = [];
  for (const life of livesOf(unit.model)) {
    const drawn = lifeInUnit(life, unit.madeInWeek);
    const defect = life.defects[0];
    if (drawn === life || defect === undefined) continue;
    grown.push({
      key: defect.key,
      upTo: (on) => {
        const worn = wornDays(unit.model.productType, unit.inServiceOn, on);
        return (worn / drawn.scale) ** life.shape - (worn / life.scale) ** life.shape;
      },
    });
  }
  for (const trouble of addedTroubles) {
    if (trouble.model !== unit.model.key || !concerns(trouble, unit.madeInWeek)) continue;
    grown.push({ key: trouble.key, upTo: (on) => addedBetween(trouble, unit.inServiceOn, unit.inServiceOn, on) });
  }
  return grown;
}

function targetOf(key: string, model: string, kind: WordKind, word: string): Target {
  const own = modelOf(model);
  return {
    key,
    kind,
    word,
    model,
    modelNumber: modelNumber(own),
    maker: makers[own.maker].name,
    productType: own.productType,
  };
}
