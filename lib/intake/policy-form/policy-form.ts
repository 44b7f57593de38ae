import { type FormField, type FormList, isList } from "./form-field";
import { textsOfValue, valueOfText } from "./form-value";
import { policySections } from "./policy-sections";

/** A policy document on its way: whatever has been typed so far. */
export type LooseDocument = Readonly<Record<string, unknown>>;
export type FormTexts = (name: string) => readonly string[];

/** The fields of a form as a document. Rows without any text are left out; a field whose condition fails says nothing. */
export function documentOfForm(texts: FormTexts, names: readonly string[]): LooseDocument {
  const document: Record<string, unknown> = {};
  for (const part of policySections.flatMap(({ parts }) => parts)) {
    if (!holds(part.onlyIf, (at) => texts(at)[0])) continue;
    if (isList(part)) put(document, part.list, rowsOf(part, texts, names));
    else put(document, part.at, valueSaid(part, texts));
  }
  return document;
}

function valueSaid({ at, kind, mayBeAbsent }: FormField, texts: FormTexts): unknown {
  const value = valueOfText(kind, texts(at));
  const isEmpty = value === false || (Array.isArray(value) && value.length === 0);
  return mayBeAbsent === true && isEmpty ? undefined : value;
}

/** What each field shows for a document; the same names that `documentOfForm` reads. */
export function textsOfDocument(document: LooseDocument): FormTexts {
  const fields = new Map<string, FormField>();
  for (const part of policySections.flatMap(({ parts }) => parts)) {
    if (!isList(part)) fields.set(part.at, part);
    else for (const field of part.fields) fields.set(`${part.list}.*.${field.at}`, field);
  }
  return (name) => {
    const field = fields.get(name.replace(/\.\d+\./, ".*."));
    return field === undefined ? [] : textsOfValue(field.kind, take(document, name));
  };
}

export function rowCount(document: LooseDocument, list: string): number {
  const rows = take(document, list);
  return Array.isArray(rows) ? rows.length : 0;
}

/** The field that a problem's JSON pointer belongs to: the one whose place is the longest beginning of it. */
export function fieldOfPointer(pointer: string): string | undefined {
  const steps = pointer.split("/").slice(1);
  for (let length = steps.length; length > 0; length--) {
    const name = steps.slice(0, length).join(".");
    const plain = name.replace(/\.\d+(?=\.|$)/, ".*");
    for (const part of policySections.flatMap(({ parts }) => parts)) {
      if (!isList(part) && part.at === name) return name;
      if (!isList(part)) continue;
      if (part.fields.some((field) => `${part.list}.*.${field.at}` === plain)) return name;
      const first = part.fields[0];
      if (plain === `${part.list}.*` && first !== undefined) return `${name}.${first.at}`;
    }
  }
  return undefined;
}

function rowsOf({ list, fields }: FormList, texts: FormTexts, names: readonly string[]): unknown {
  const prefix = `${list}.`;
  const indices = new Set(
    names.filter((name) => name.startsWith(prefix)).map((name) => Number(name.slice(prefix.length).split(".")[0])),
  );
  return [...indices]
    .sort((a, b) => a - b)
    .flatMap((index) => {
      const of = (at: string) => texts(`${prefix}${index}.${at}`);
      const isBlank = fields.every(({ at, kind, choices, none }) => {
        const isPreset = choices !== undefined && kind === "choice" && none === undefined;
        return isPreset || of(at).every((text) => text.trim() === "");
      });
      if (isBlank) return [];
      const row: Record<string, unknown> = {};
      for (const field of fields) {
        if (holds(field.onlyIf, (at) => of(at)[0])) put(row, field.at, valueOfText(field.kind, of(field.at)));
      }
      return [row];
    });
}

function holds(condition: FormField["onlyIf"], textOf: (at: string) => string | undefined): boolean {
  if (condition === undefined) return true;
  const [at, ...values] = condition;
  return values.includes(textOf(at) ?? "");
}

/** Sets a place of the document, making the objects on the way; what says nothing makes none. */
function put(document: Record<string, unknown>, at: string, value: unknown): void {
  if (value === undefined) return;
  const steps = at.split(".");
  const last = steps.pop() ?? at;
  let here = document;
  for (const step of steps) {
    here[step] ??= {};
    here = here[step] as Record<string, unknown>; // made just now, or an object by the form's own fields
  }
  here[last] = value;
}

function take(document: LooseDocument, at: string): unknown {
  let here: unknown = document;
  for (const step of at.split(".")) {
    if (typeof here !== "object" || here === null) return undefined;
    here = (here as LooseDocument)[step]; // an object, found just now
  }
  return here;
}
