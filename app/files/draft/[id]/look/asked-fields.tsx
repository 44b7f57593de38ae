import { formatCounted } from "@/lib/format/format-count";
import type { DraftNotes } from "../../../_draft/draft-notes";
import type { SeenTable } from "../../../_draft/seen-table";
import { Question } from "./questions";

interface Props {
  readonly seen: SeenTable;
  readonly notes: DraftNotes;
}

/** Names of the fields that are asked about the form: they stand here and not among the guesses. */
export function askedNames({ questions }: SeenTable): ReadonlySet<string> {
  return new Set(questions.map(({ about }) => about).filter((about) => about !== "headerRow"));
}

/** What the bytes themselves can't tell. */
export function AskedFields({ seen, notes: { wishes } }: Props) {
  const coded = seen.questions.find((question) => question.about === "encoding");
  const sheets = seen.questions.find((question) => question.about === "sheet");
  return (
    <>
      {coded?.about === "encoding" && (
        <Question
          name="encoding"
          question={coded.question}
          answer={
            wishes.encoding ??
            (coded.samples.some(({ utf8 }) => utf8.includes(noCharacter)) ? "windows-1252" : undefined)
          }
          choices={[
            { value: "utf-8", name: <Reading texts={coded.samples.map(({ utf8 }) => utf8)} /> },
            { value: "windows-1252", name: <Reading texts={coded.samples.map(({ windows1252 }) => windows1252)} /> },
          ]}
        />
      )}
      {sheets !== undefined && (
        <Question
          name="sheet"
          question={sheets.question}
          answer={wishes.sheet}
          choices={seen.sheets.map(({ name, rows }) => ({
            value: name,
            name: `${name}, ${formatCounted(rows, "row")}`,
          }))}
        />
      )}
    </>
  );
}

/** Stands where bytes are no UTF-8: then the other reading is right, and only has to be looked at. */
const noCharacter = "\uFFFD";

function Reading({ texts }: { readonly texts: readonly string[] }) {
  return texts.map((text) => `“${text}”`).join("  ");
}
