import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import { failureModeOf } from "@/lib/domain/failure-modes";
import type { Currency } from "@/lib/domain/money";
import { symptomOf } from "@/lib/domain/symptoms";
import { capitalised } from "@/lib/format/capitalised";
import { formatMoney } from "@/lib/format/format-money";

/** A stored column of a job as people call it: "Labour", "Completed on". */
export function fieldInWords(column: string): string {
  return capitalised(column.replace(/_cents$/, "").replaceAll("_", " "));
}

const names: Readonly<Record<string, (key: string) => string | undefined>> = {
  component: (key) => componentOf(key)?.name,
  symptom: (key) => symptomOf(key)?.name,
  failure_mode: (key) => failureModeOf(key)?.name,
  cause: (key) => Object.entries(causes).find(([cause]) => cause === key)?.[1].name,
};

const wordColumns: ReadonlySet<string> = new Set(["status", "payer"]);

/** A stored value of a job's column as it is shown. */
export function valueInWords(column: string, value: string | null, currency: Currency): string {
  if (value === null || value === "") return "blank";
  if (column.endsWith("_cents")) return formatMoney({ cents: Number(value), currency });
  if (wordColumns.has(column)) return value.replaceAll("_", " ");
  return names[column]?.(value) ?? value;
}
