import { Button } from "@/app/_ui/button";
import type { Choice } from "@/app/_ui/select-field";
import type { PolicyDraft } from "@/db/queries/policy-versions";
import { type FormSection, isList } from "@/lib/intake/policy-form/form-field";
import { type LooseDocument, rowCount, textsOfDocument } from "@/lib/intake/policy-form/policy-form";
import { policySections } from "@/lib/intake/policy-form/policy-sections";
import { dropDraft, saveDraft } from "../actions";
import styles from "../coverage.module.css";
import { FormPart, FormRows, type FormShown } from "./form-part";

interface Props {
  readonly draft: PolicyDraft;
  readonly problems: ReadonlyMap<string, string>;
}

/** The whole policy, section by section; it works without script, and saving never refuses. */
export function PolicyForm({ draft, problems }: Props) {
  const { draftId, revision, document } = draft;
  const shown: FormShown = { texts: textsOfDocument(document), problems, covers: coversOf(document) };
  return (
    <>
      <form action={saveDraft} className={styles.form}>
        <input type="hidden" name="draft" value={draftId} />
        <input type="hidden" name="revision" value={revision} />
        {policySections.map((section) => (
          <Section key={section.key} section={section} document={document} shown={shown} />
        ))}
        <div className={`cluster ${styles.acts}`}>
          <Button name="then" value="review">
            What would it change?
          </Button>
          <Button name="then" value="check" weight="plain">
            Save and check
          </Button>
          <Button name="then" value="save" weight="plain">
            Save
          </Button>
        </div>
      </form>
      <form action={dropDraft}>
        <input type="hidden" name="draft" value={draftId} />
        <Button weight="plain">Delete this draft</Button>
      </form>
    </>
  );
}

function Section({
  section,
  document,
  shown,
}: {
  readonly section: FormSection;
  readonly document: LooseDocument;
  readonly shown: FormShown;
}) {
  const { key, title, hint, parts } = section;
  return (
    <details className={styles.section} open>
      <summary id={`section-${key}`}>{title}</summary>
      {hint !== undefined && <p className="small soft">{hint}</p>}
      <div className={styles.fields}>
        {parts.map((part) =>
          isList(part) ? null : <FormPart key={part.at} field={part} name={part.at} shown={shown} />,
        )}
      </div>
      {parts.map((part) =>
        isList(part) ? (
          <FormRows key={part.list} part={part} rows={rowCount(document, part.list)} shown={shown} />
        ) : null,
      )}
    </details>
  );
}

function coversOf({ classes }: LooseDocument): readonly Choice[] {
  const named = Array.isArray(classes) ? (classes as readonly Readonly<Record<string, unknown>>[]) : []; // rows of the form
  return [
    { value: "whole_unit", name: "The whole unit" },
    { value: "adjustment", name: "Adjustments" },
    { value: "cosmetic", name: "Looks" },
    ...named.flatMap(({ key, name }) =>
      typeof key === "string" ? [{ value: `class:${key}`, name: typeof name === "string" ? name : key }] : [],
    ),
  ];
}
