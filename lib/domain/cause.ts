// Why the appliance was in trouble. Only a confirmed cause in the component itself is a failure; a call closed with an
// outside cause or without a fault is a call. Source of the list: causes that published warranty terms exclude, and
// common practice, no source.

export const causes = {
  component: { name: "The component itself", kind: "component", borneBy: "payer" },
  foreign_object: { name: "Foreign object", kind: "outside", borneBy: "customer" },
  suds_detergent: { name: "Suds or wrong detergent", kind: "outside", borneBy: "customer" },
  installation: { name: "Installation", kind: "outside", borneBy: "installer or customer" },
  supply: { name: "Power, water or gas supply", kind: "outside", borneBy: "customer or utility" },
  surge_lightning: { name: "Surge or lightning", kind: "outside", borneBy: "insurer" },
  freeze: { name: "Frost damage", kind: "outside", borneBy: "customer" },
  liquid_pest: { name: "Liquid or pests", kind: "outside", borneBy: "customer or insurer" },
  commercial_use: { name: "Commercial use", kind: "outside", borneBy: "customer" },
  cosmetic: { name: "Cosmetic damage", kind: "outside", borneBy: "dealer or carrier" },
  consumable: { name: "Consumable part", kind: "outside", borneBy: "customer" },
  maintenance: { name: "Lack of maintenance", kind: "outside", borneBy: "customer" },
  misuse_accident: { name: "Misuse or accident", kind: "outside", borneBy: "customer" },
  modified_other_repair: { name: "Opened or modified by others", kind: "outside", borneBy: "depends on the terms" },
  blockage_downstream: { name: "Blocked past the appliance", kind: "outside", borneBy: "customer" },
  education: { name: "Use explained to the customer", kind: "outside", borneBy: "customer" },
  act_of_god: { name: "Act of God", kind: "outside", borneBy: "insurer" },
  transit: { name: "Transport damage", kind: "outside", borneBy: "carrier" },
  no_fault_found: { name: "No fault found", kind: "none", borneBy: "diagnosis only, or customer" },
  not_determined: { name: "Cause not determined", kind: "none", borneBy: "not decided" },
} as const satisfies Record<string, CauseEntry>;

export interface CauseEntry {
  readonly name: string;
  readonly kind: CauseKind;
  /** Who usually pays; the policy wording decides. */
  readonly borneBy: string;
}

export type CauseKind = "component" | "outside" | "none";
export type Cause = keyof typeof causes;
export const causeKeys = Object.keys(causes) as readonly Cause[]; // Object.keys loses the key type

/** What a job is counted as: a failure of its component, a call, or nothing at all (void, cancelled, estimate, duplicate). */
export type CountedAs = "failure" | "call" | "nothing";
