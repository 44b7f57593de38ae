// Check sheets: what a technician does at the machine, in which order, and what each result leads to. A sheet is data, one
// for each kind of appliance and component; a visit begins with a symptom and joins the sheets of what may be behind it.
import type { PhotoSubject } from "@/lib/domain/job";
import type { OwnCheck } from "@/lib/domain/own-check";
import type { ProductType } from "@/lib/domain/product-type";
import type { CautionKey } from "@/lib/evidence/cautions";
import type { Check } from "@/lib/evidence/check";
import { checkOf } from "@/lib/evidence/checks";
import { checkOfOwn } from "@/lib/evidence/own-check";

export interface Sheet {
  readonly productType: ProductType;
  readonly component: string;
  /** 1 is what comes with the program. */
  readonly version: number;
  readonly steps: readonly SheetStep[];
}

export interface SheetStep {
  /** Key in the catalogue of checks, which holds machine state, points, meter, range, cautions and what results mean; or of `own`. */
  readonly check: string;
  /** The check itself where the company wrote it. */
  readonly own: OwnCheck | undefined;
  /** How long it takes, opening the machine included. */
  readonly minutes: number;
  /** Readings of the same thing at other points: the pairs of a motor. */
  readonly times: number;
  /** The picture that a payer wants of it. */
  readonly photo: PhotoSubject | undefined;
  /** The company's own words beside the check. */
  readonly note: string;
  /** Cautions that the company adds to those of the check, of which none can be taken away. */
  readonly cautions: readonly CautionKey[];
  /** Asked only after another check of the sheet came out so. */
  readonly after: StepBranch | undefined;
}

export interface StepBranch {
  readonly check: string;
  /** As it should be, not as it should be, or one of the check's words. */
  readonly came: "good" | "bad" | { readonly word: string };
}

/** Product type and component, such as front_load_washer/drain_pump: what a sheet is called by in every version. */
export function sheetKey({ productType, component }: Pick<Sheet, "productType" | "component">): string {
  return `${productType}/${component}`;
}

/** The check of a step; undefined where neither the step nor the catalogue has it. */
export function checkOfStep({ check, own }: Pick<SheetStep, "check" | "own">): Check | undefined {
  return own === undefined ? checkOf(check) : checkOfOwn(own);
}

/** The company's own checks on these sheets, by their keys. */
export function ownChecksOf(sheets: readonly Pick<Sheet, "steps">[]): ReadonlyMap<string, OwnCheck> {
  return new Map(
    sheets.flatMap(({ steps }) => steps.flatMap(({ own }) => (own === undefined ? [] : [[own.key, own]]))),
  );
}
