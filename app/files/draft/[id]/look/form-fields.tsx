import { Field } from "@/app/_ui/field";
import { SelectField } from "@/app/_ui/select-field";
import { formatCounted } from "@/lib/format/format-count";
import { delimiters, type Encoding, encodings } from "@/lib/intake/tables/table-form";
import type { SeenTable } from "../../../_draft/seen-table";
import { askedNames } from "./asked-fields";
import { delimiterWords } from "./read-look-form";

const encodingNames: Readonly<Record<Encoding, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16, low byte first",
  "utf-16be": "UTF-16, high byte first",
  "windows-1252": "Windows-1252, Western European",
};

/** How the bytes become rows: each guess with its reason, each to be changed. */
export function FormFields({ seen }: { readonly seen: SeenTable }) {
  const { form, reasons, sheets } = seen;
  const asked = askedNames(seen);
  const doubted = seen.questions.find(({ about }) => about === "headerRow");
  return (
    <>
      {form.kind === "workbook" && !asked.has("sheet") && (
        <SelectField
          label="Sheet"
          name="sheet"
          hint={reasons.sheet}
          value={form.sheet}
          choices={sheets.map(({ name, rows }) => ({ value: name, name: `${name}, ${formatCounted(rows, "row")}` }))}
        />
      )}
      {form.kind !== "workbook" && !asked.has("encoding") && (
        <SelectField
          label="Characters"
          name="encoding"
          hint={reasons.encoding}
          value={form.encoding}
          choices={encodings.map((value) => ({ value, name: encodingNames[value] }))}
        />
      )}
      {form.kind === "text" && (
        <SelectField
          label="Between the columns"
          name="delimiter"
          hint={reasons.delimiter}
          value={delimiterWords[form.delimiter]}
          choices={delimiters.map((mark) => ({ value: delimiterWords[mark], name: delimiterWords[mark] }))}
        />
      )}
      {form.kind !== "lines" && (
        <Field
          label="Names of the columns stand in row"
          name="headerRow"
          hint={`${doubted === undefined ? "" : `${doubted.question} `}${reasons.headerRow ?? ""} Write 0 where no row names them.`}
          value={String(form.headerRow)}
          inputMode="numeric"
          width="short"
        />
      )}
      {form.kind === "workbook" && (
        <div>
          <p>
            <strong>Days are counted from {form.dateBase}</strong>
          </p>
          {reasons.dateBase !== undefined && <p className="small soft">{reasons.dateBase}</p>}
        </div>
      )}
    </>
  );
}
