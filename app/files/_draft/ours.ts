import { open } from "node:fs/promises";
import { readHeader } from "@/lib/intake/read-header";
import type { TableLook } from "@/lib/intake/tables/look-at-table";
import type { TableForm } from "@/lib/intake/tables/table-form";

/** How files of ours are written. */
export const formOfOurs = {
  kind: "text",
  encoding: "utf-8",
  delimiter: ",",
  headerRow: 1,
} as const satisfies TableForm;

/** Whether a table has our columns in our notation, so that nothing has to be matched. */
export function isTableOfOurs({ form, header }: Pick<TableLook, "form" | "header">): boolean {
  return (
    form.kind === "text" &&
    form.encoding === formOfOurs.encoding &&
    form.delimiter === formOfOurs.delimiter &&
    form.headerRow === formOfOurs.headerRow &&
    readHeader(header).ok
  );
}

const beginningBytes = 4_096;

/** Whether the file is a JSON document that names a schema of ours: the company, or policies. */
export async function isDocumentOfOurs(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(beginningBytes), 0, beginningBytes, 0);
    const text = buffer.toString("utf8", 0, bytesRead);
    return /^\uFEFF?\s*\{/.test(text) && /"schema"\s*:\s*"ohmsworth\//.test(text);
  } finally {
    await file.close();
  }
}
