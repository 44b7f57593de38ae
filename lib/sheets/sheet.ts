// Check sheets: what a technician does at the machine, in which order, and what each result leads to. A sheet is data, one
// for each kind of appliance and component; a visit begins with a symptom and joins the sheets of what may be behind it.
import type { PhotoSubject } from "@/lib/domain/job";
import type { ProductType } from "@/lib/domain/product-type";

export interface Sheet {
  readonly productType: ProductType;
  readonly component: string;
  /** 1 is what comes with the program. */
  readonly version: number;
  readonly steps: readonly SheetStep[];
}

export interface SheetStep {
  /** Key in the catalogue of checks, which holds machine state, points, meter, range, cautions and what results mean. */
  readonly check: string;
  /** How long it takes, opening the machine included. */
  readonly minutes: number;
  /** Readings of the same thing at other points: the pairs of a motor. */
  readonly times: number;
  /** The picture that a payer wants of it. */
  readonly photo: PhotoSubject | undefined;
  /** The company's own words beside the check. */
  readonly note: string;
}

/** Product type and component, such as front_load_washer/drain_pump: what a sheet is called by in every version. */
export function sheetKey({ productType, component }: Pick<Sheet, "productType" | "component">): string {
  return `${productType}/${component}`;
}
