// What a form for policies is made of. Each field stands for one place of the document, so that a problem of the document
// finds its field and a draft can be saved however incomplete it is.

export interface FormField {
  /** Place in the document, steps joined by dots; inside a list, from its row. */
  readonly at: string;
  readonly label: string;
  readonly kind: FieldKind;
  readonly hint?: string;
  readonly choices?: readonly FormChoice[];
  /** Name of the empty choice; without it one of the choices always holds. */
  readonly none?: string;
  /** A list or flag that may be left out of the document: empty or not set it says nothing. */
  readonly mayBeAbsent?: true;
  readonly onlyIf?: OnlyIf;
}

/** Counts only while another field of the same row or document holds one of these values. */
export type OnlyIf = readonly [at: string, is: string, ...orIs: string[]];

export interface FormChoice {
  readonly value: string;
  readonly name: string;
}

/** `set`: any of the choices. `list`: words between commas or on lines. `covers`: what a line of the terms speaks of. `answer`: yes, no, or nothing said. */
export type FieldKind =
  | "text"
  | "day"
  | "term"
  | "money"
  | "number"
  | "list"
  | "serials"
  | "choice"
  | "set"
  | "flag"
  | "answer"
  | "covers";

export interface FormList {
  readonly list: string;
  /** What people call one row. */
  readonly row: string;
  readonly fields: readonly FormField[];
  readonly onlyIf?: OnlyIf;
}

export interface FormSection {
  readonly key: string;
  readonly title: string;
  readonly hint?: string;
  readonly parts: readonly (FormField | FormList)[];
}

export function isList(part: FormField | FormList): part is FormList {
  return "list" in part;
}
