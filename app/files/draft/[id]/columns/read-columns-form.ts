import type { FieldProblem } from "@/app/_ui/error-summary";
import { tableKinds } from "@/lib/intake/file-kinds";
import type { Matching } from "@/lib/intake/matching/matching";
import { matchingSchema } from "@/lib/intake/matching/matching-schema";
import { unsettled } from "./word-field";

export type ColumnsReading =
  | { readonly ok: true; readonly matching: Matching }
  | { readonly ok: false; readonly problems: readonly FieldProblem[] };

/** The matching as a person has gone through it. Another kind of rows begins it anew, since its columns are others. */
export function readColumnsForm(form: FormData, before: Matching): ColumnsReading {
  const kind = tableKinds.find((each) => each === form.get("kind")) ?? before.kind;
  if (kind !== before.kind) {
    const columns = before.columns.map(({ source }) => ({ source, target: undefined }));
    return { ok: true, matching: { ...before, kind, columns, words: {}, constants: {} } };
  }
  const text = (name: string) => String(form.get(name) ?? "");
  const columns = before.columns.map(({ source }, place) => ({ source, target: text(`column-${place}`) || undefined }));
  const { words, constants } = gathered(form);
  const rowIs = text("rowIs") === "one part line" ? "one part line" : "one record";
  const read = matchingSchema.safeParse({ ...before, columns, words, constants, rowIs });
  if (read.success) return { ok: true, matching: read.data };
  return {
    ok: false,
    problems: read.error.issues.map(({ path, message }) => ({ field: fieldOf(path), text: message })),
  };
}

function fieldOf(path: readonly PropertyKey[]): string | undefined {
  return path[0] === "columns" ? `column-${String(path[1])}` : undefined;
}

/** Fields of the form `word:target:their word` and `constant:target`. */
function gathered(form: FormData): Pick<Matching, "words" | "constants"> {
  const words: Record<string, Record<string, string>> = {};
  const constants: Record<string, string> = {};
  for (const [name, value] of form) {
    const [sort, target, ...rest] = name.split(":");
    if (target === undefined || typeof value !== "string") continue;
    if (sort === "constant" && value.trim() !== "") constants[target] = value.trim();
    if (sort !== "word") continue;
    const list = words[target] ?? {};
    if (value !== unsettled) list[rest.join(":").toLowerCase()] = value;
    words[target] = list;
  }
  return { words, constants };
}
