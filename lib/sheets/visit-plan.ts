import type { PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";
import type { Check } from "@/lib/evidence/check";
import { checkOf } from "@/lib/evidence/checks";
import { entriesFor } from "@/lib/evidence/entries";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { type Branch, branchOf } from "./branches";
import { checkMinutes } from "./check-minutes";
import { bothBranches, ownBranch } from "./own-branch";
import { safetyTier } from "./safety-tier";
import { checkOfStep, type Sheet } from "./sheet";
import { checksOfEntries } from "./shipped-sheets";

/** What one visit is led through: the sheets of everything that may be behind the symptom, joined. */
export interface VisitPlan {
  readonly productType: ProductType;
  readonly symptom: string | undefined;
  readonly sheets: readonly Sheet[];
  /** In the sheets' order within each tier of safety. */
  readonly steps: readonly PlanStep[];
  /** What may be behind it. */
  readonly entries: readonly EvidenceEntry[];
}

export interface PlanStep {
  readonly check: Check;
  readonly minutes: number;
  readonly times: number;
  readonly photo: PhotoSubject | undefined;
  readonly note: string;
  readonly tier: number;
  /** What must have been found before it is asked for. */
  readonly branch: Branch | undefined;
  /** Ids of the entries that it says something about. */
  readonly entryIds: ReadonlySet<string>;
  /** One of these will do: the checks of one required step. */
  readonly sameAs: readonly string[];
}

/** Components whose rules name the symptom; where none does, all of the appliance: a symptom that nobody foresaw leaves everything open. */
export function componentsBehind(
  productType: ProductType,
  symptom: string,
  sheets: readonly Sheet[],
): readonly string[] {
  const own = sheets.filter((sheet) => sheet.productType === productType).map(({ component }) => component);
  const named = own.filter((component) =>
    entriesFor(productType, component).some(({ symptoms }) => symptoms.includes(symptom)),
  );
  return named.length > 0 ? named : own;
}

/** @param sheets  the versions to work by, of one product type */
export function visitPlan({
  productType,
  symptom,
  sheets,
}: Pick<VisitPlan, "productType" | "symptom" | "sheets">): VisitPlan {
  const entries = boardsLast(
    sheets.flatMap(({ component }) => {
      const own = entriesFor(productType, component);
      const named = own.filter(({ symptoms }) => symptom !== undefined && symptoms.includes(symptom));
      return named.length > 0 ? named : own;
    }),
  );
  const planned = plannedKeys(sheets, entries);
  const steps = [...planned].flatMap((key) => planStep(key, sheets, entries, planned));
  return { productType, symptom, sheets, entries, steps: steps.sort((a, b) => a.tier - b.tier) };
}

/** A board is condemned only by exclusion, so its checks come after those of what it drives. */
function boardsLast(entries: readonly EvidenceEntry[]): readonly EvidenceEntry[] {
  const isBoard = ({ failureClass }: EvidenceEntry) => failureClass === "electronic";
  return [...entries.filter((entry) => !isBoard(entry)), ...entries.filter(isBoard)];
}

/** The order of the rules first, then what the company's own sheets put elsewhere or added. */
function plannedKeys(sheets: readonly Sheet[], entries: readonly EvidenceEntry[]): ReadonlySet<string> {
  const wanted = new Set(checksOfEntries(entries));
  const listed = sheets.map(({ steps }) => steps.map(({ check }) => check));
  const onSheets = new Set(listed.flat());
  const ofRules = [...wanted].filter((key) => onSheets.has(key));
  const edited = sheets.some(({ version }) => version > 1);
  if (!edited) return new Set(ofRules);
  const own = sheets.filter(({ version }) => version > 1).flatMap(({ steps }) => steps.map(({ check }) => check));
  const ownSet = new Set(own);
  return new Set(ofRules.flatMap((key) => (ownSet.has(key) ? own : [key])).concat(own));
}

function planStep(
  key: string,
  sheets: readonly Sheet[],
  entries: readonly EvidenceEntry[],
  planned: ReadonlySet<string>,
): readonly PlanStep[] {
  const listed = sheets.flatMap(({ component, version, steps }) => {
    const step = steps.find((each) => each.check === key);
    return step === undefined ? [] : [{ component, version, step, steps }];
  });
  // A sheet that the company edited says more about its own work than one that nobody touched.
  const [best] = listed.sort((a, b) => b.version - a.version);
  const known = best === undefined ? undefined : checkOfStep(best.step);
  if (best === undefined || known === undefined) return [];
  const { minutes, times, photo, note, cautions, after } = best.step;
  const check = { ...known, cautions: [...new Set([...known.cautions, ...cautions])] };
  const spoken = entries.filter((entry) => checksOfEntries([entry]).includes(key));
  // A check that the company added says something about whatever its sheet is for.
  const of =
    spoken.length > 0
      ? spoken
      : entries.filter((entry) => listed.some(({ component }) => component === entry.component));
  const sameAs = [...new Set(spoken.flatMap(({ steps }) => steps.filter((step) => step.includes(key)).flat()))].filter(
    (other) => other !== key,
  );
  return [
    {
      check,
      minutes,
      times,
      photo,
      note,
      tier: safetyTier(check),
      branch: bothBranches(branchOf(key, planned), after === undefined ? undefined : ownBranch(after, best.steps)),
      entryIds: new Set(of.map(({ id }) => id)),
      sameAs,
    },
  ];
}

/** One check by itself, as when the desk asks for it; undefined where the catalogue has none of that key. */
export function planStepOf(key: string): PlanStep | undefined {
  const check = checkOf(key);
  if (check === undefined) return undefined;
  return {
    check,
    minutes: checkMinutes(check),
    times: 1,
    photo: undefined,
    note: "",
    tier: safetyTier(check),
    branch: undefined,
    entryIds: new Set(),
    sameAs: [],
  };
}
