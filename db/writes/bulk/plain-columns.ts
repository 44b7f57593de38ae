import { causeKeys } from "@/lib/domain/cause";
import { jobStatuses, partRoles, payerKinds } from "@/lib/domain/job";
import { currencies } from "@/lib/domain/money";
import { productTypeKeys } from "@/lib/domain/product-type";
import { unitUses } from "@/lib/domain/unit";
import type { FileKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import {
  type PlainTest,
  plainAmount,
  plainDay,
  plainIdentifier,
  plainNote,
  plainText,
  plainWhole,
  plainWord,
} from "./plain-cells";

/** What makes a row of one kind plain. */
export interface PlainColumns {
  /** A column that is missing here must be blank. */
  readonly tests: Readonly<Record<string, PlainTest>>;
  /** Days in an order that contradicts nothing, whatever the parser compares; rows in another order are asked about. */
  readonly order: readonly string[];
  /** Pairs of columns that must differ. */
  readonly apart: readonly (readonly [string, string])[];
  /** Where one of these is blank the parser is asked, although it may take it. */
  readonly asked: readonly string[];
}

/** Undefined for kinds whose files are never large. */
export function plainColumns(kind: FileKind, setting: IntakeSetting): PlainColumns | undefined {
  const day = plainDay(setting.today);
  switch (kind) {
    case "jobs":
      return {
        tests: jobTests(setting, day),
        order: jobDays,
        apart: [["job_number", "callback_of"]],
        asked: ["model"],
      };
    case "part-lines":
      return { tests: partLineTests(setting, day), order: [], apart: [], asked: [] };
    case "units":
      return { tests: unitTests(day), order: unitDays, apart: [], asked: [] };
    default:
      return undefined;
  }
}

const jobDays = words(
  "sold_on delivered_on installed_on requested_on first_visit_on diagnosed_on parts_ordered_on parts_received_on completed_on invoiced_on",
);
const unitDays = words("shipped_on sold_on delivered_on installed_on retired_on");

function jobTests({ catalogue }: IntakeSetting, day: PlainTest): Record<string, PlainTest> {
  return {
    ...each("job_number maker model serial callback_of", plainIdentifier),
    ...each(jobDays.join(" "), day),
    ...each("authorized_on", day),
    ...each("complaint cause_note correction", plainNote),
    ...each("technician authorization_number", plainText),
    ...each("visits labour_minutes trip_miles", plainWhole(0)),
    ...each("labour trip", plainAmount),
    status: plainWord(jobStatuses),
    product_type: plainWord(productTypeKeys),
    symptom: plainWord(catalogue.symptoms),
    component: plainWord(catalogue.components),
    failure_mode: plainWord(catalogue.failureModes),
    cause: plainWord(causeKeys),
    payer: plainWord(payerKinds),
    currency: plainWord(currencies),
  };
}

function partLineTests({ catalogue }: IntakeSetting, day: PlainTest): Record<string, PlainTest> {
  return {
    ...each("job_number part_number invoice_number", plainIdentifier),
    ...each("line quantity", plainWhole(1)),
    ...each("distributor invoice_line", plainText),
    description: plainNote,
    component: plainWord(catalogue.components),
    role: plainWord(partRoles),
    unit_cost: plainAmount,
    currency: plainWord(currencies),
    invoiced_on: day,
  };
}

function unitTests(day: PlainTest): Record<string, PlainTest> {
  return {
    ...each("maker model serial", plainIdentifier),
    ...each("sold_on delivered_on installed_on occupied_on registered_on retired_on shipped_on recorded_from", day),
    product_type: plainWord(productTypeKeys),
    use: plainWord(unitUses),
    owner_number: plainWhole(1),
  };
}

function each(columns: string, test: PlainTest): Record<string, PlainTest> {
  return Object.fromEntries(words(columns).map((column) => [column, test]));
}

function words(text: string): readonly string[] {
  return text.split(" ");
}
