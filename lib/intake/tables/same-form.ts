import type { TableForm } from "./table-form";

/** What was asked about the form of the last file with a header is answered for this one, where both are read alike. */
export function isSameForm(a: TableForm, b: TableForm): boolean {
  return JSON.stringify(Object.entries(a).toSorted()) === JSON.stringify(Object.entries(b).toSorted());
}
