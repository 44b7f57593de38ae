import type { Made } from "./hostile-pages";
import { hostile, type Place } from "./hostile-words";

interface FileOut {
  readonly at: string;
  /** Whose words must stand in it. */
  readonly holds: readonly Place[];
}

/** Every kind of table that can be taken away. */
export function tablesOut({ signal, changes }: Made): readonly FileOut[] {
  return [
    { at: changes, holds: [] },
    { at: "/jobs/jobs.csv?words=PLANTED-1", holds: ["maker", "model", "technician", "component", "fault code"] },
    { at: "/claims/unclaimed/unclaimed.csv", holds: ["payer"] },
    { at: "/parts/parts.csv", holds: ["part description", "newer part"] },
    { at: "/parts/orders/orders.csv", holds: ["supplier", "note on an order", "new part", "name of a new part"] },
    { at: "/parts/money/money.csv", holds: [] },
    { at: "/repeats/rates.csv?by=maker,model", holds: ["maker", "model"] },
    { at: "/repeats/rates.csv?by=component", holds: [] },
    { at: "/repeats/drain_pump/curve.csv?rows=model", holds: [] },
    { at: `/repeats/drain_pump/compare/rates.csv?with=maker:${encodeURIComponent(hostile.maker)}`, holds: [] },
    { at: "/repeats/signals/signals.csv", holds: ["maker", "model"] },
    { at: "/repeats/signals/signals.csv?of=funnel", holds: ["maker", "model"] },
    { at: `${signal}/units.csv`, holds: ["model"] },
    { at: "/repeats/visits/visits.csv?by=technician", holds: ["technician"] },
  ];
}

/** Whose words the payer gets. */
export const inPacket: readonly Place[] = [
  "maker",
  "model",
  "serial",
  "job number",
  "complaint",
  "cause note",
  "authorization",
  "part number",
  "part description",
  "invoice",
  "invoice line",
  "test point",
  "other test point",
  "unit of a reading",
  "note of a reading",
  "fault code",
  "policy",
  "payer",
  "terms",
  "labour class",
  "campaign",
  "caption",
  "plan",
  "value by hand",
  "caption by hand",
];

/** What other programs read. */
export function documentsOut({ claim }: Made): readonly FileOut[] {
  return [
    { at: `/claims/${claim}/claim.json`, holds: inPacket },
    { at: `/claims/${claim}/sent/1/claim.json`, holds: inPacket },
    { at: `/claims/${claim}/sent/1/content.json`, holds: inPacket },
    {
      at: "/shop/coverage/policy/planted_household/1/policy.json",
      holds: ["maker", "policy", "payer", "terms", "class", "campaign", "bulletin"],
    },
  ];
}
