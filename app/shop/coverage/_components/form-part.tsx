import { Field } from "@/app/_ui/field";
import { type Choice, SelectField } from "@/app/_ui/select-field";
import type { PolicyProblem } from "@/lib/intake/parse-policy";
import type { FormField, FormList } from "@/lib/intake/policy-form/form-field";
import { type FormTexts, fieldOfPointer } from "@/lib/intake/policy-form/policy-form";
import styles from "../coverage.module.css";
import { TickBox, TickBoxes } from "./tick-boxes";

export interface FormShown {
  readonly texts: FormTexts;
  /** What is wrong with each field, by its name. */
  readonly problems: ReadonlyMap<string, string>;
  /** What a line of the terms can cover: the whole unit and the classes of this draft. */
  readonly covers: readonly Choice[];
}

/** One field under its name in the document. */
export function FormPart({
  field,
  name,
  shown,
}: {
  readonly field: FormField;
  readonly name: string;
  readonly shown: FormShown;
}) {
  const { label, kind, hint, choices = [], none } = field;
  const values = shown.texts(name);
  const [value] = values;
  const shared = { label, name, problem: shown.problems.get(name), ...(hint === undefined ? {} : { hint }) };
  switch (kind) {
    case "choice":
    case "answer":
    case "covers": {
      const offered = kind === "covers" ? withValue(shown.covers, value) : choices;
      return <SelectField {...shared} choices={offered} value={value} {...(none === undefined ? {} : { none })} />;
    }
    case "set":
      return <TickBoxes {...shared} choices={choices} values={values} />;
    case "flag":
      return <TickBox {...shared} checked={value === "yes"} />;
    case "serials":
      return <Field {...shared} type="textarea" value={value} />;
    case "money":
    case "number":
      return <Field {...shared} inputMode="decimal" width="short" value={value} />;
    case "term":
    case "day":
      return <Field {...shared} width="short" value={value} />;
    default:
      return <Field {...shared} value={value} />;
  }
}

/** Rows of a list with blank ones below; a row whose fields are emptied is left out at the next saving. */
export function FormRows({
  part,
  rows,
  shown,
}: {
  readonly part: FormList;
  readonly rows: number;
  readonly shown: FormShown;
}) {
  return Array.from({ length: rows + blankRows }, (_, row) => row).map((row) => (
    <fieldset key={row} className={styles.row}>
      <legend>{row < rows ? `${part.row} ${row + 1}` : `${part.row}: another`}</legend>
      <div className={styles.fields}>
        {part.fields.map((field) => (
          <FormPart key={field.at} field={field} name={`${part.list}.${row}.${field.at}`} shown={shown} />
        ))}
      </div>
    </fieldset>
  ));
}

const blankRows = 2;

/** A class that was taken away stays to be seen where a line still names it. */
function withValue(covers: readonly Choice[], value: string | undefined): readonly Choice[] {
  if (value === undefined || covers.some((choice) => choice.value === value)) return covers;
  return [...covers, { value, name: `${value.replace("class:", "")} (no such class)` }];
}

/** Problems by field; those that belong to no field stand under the empty name. */
export function problemsByField(problems: readonly PolicyProblem[]): ReadonlyMap<string, string> {
  const byField = new Map<string, string>();
  for (const { pointer, problem } of problems) {
    const name = fieldOfPointer(pointer) ?? "";
    const sentence = /missing|undefined|required|expected|Invalid/i.test(problem)
      ? "is missing or cannot be read"
      : problem;
    if (!byField.has(name)) byField.set(name, name === "" ? `${pointer} ${sentence}` : sentence);
  }
  return byField;
}
