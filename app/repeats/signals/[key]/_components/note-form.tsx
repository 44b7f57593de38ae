import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import { Plate } from "@/app/_ui/plate";
import type { TechnicianNote } from "@/db/queries/technician-notes";
import { liftNote, writeNote } from "../actions";
import type { SignalView } from "../load-signal";
import { ActForm } from "./act-form";

/** What technicians should know before they open one of these machines. */
export function NoteForm({ view: { signal, production, notes } }: { readonly view: SignalView }) {
  const { maker, model } = signal.lead.key;
  const crowded = production.scan.kind === "run" && production.scan.chance <= 0.05 ? production.serials : undefined;
  const hidden = {
    key: signal.key,
    maker,
    model: model ?? "",
    component: signal.wordKind === "component" ? signal.word : "",
  };
  return (
    <Plate title="What to tell technicians">
      {notes.map((note) => (
        <div key={note.noteId} className="stack-tight">
          <p>
            “{note.words}” — {noteRange(note)}, by {note.by}
          </p>
          <ActForm action={liftNote} hidden={{ key: signal.key, note: String(note.noteId) }} field="words">
            <Button weight="plain">No longer show it</Button>
          </ActForm>
        </div>
      ))}
      <ActForm action={writeNote} hidden={hidden} field="words">
        <Field
          label="Note"
          name="words"
          type="textarea"
          hint="Shown on the check sheet of the serials below. What to look at first, what to bring, what to photograph."
        />
        <Field
          label="From serial"
          name="from"
          width="short"
          value={crowded?.from}
          hint="Blank at both ends: every serial of the model."
        />
        <Field label="To serial" name="to" width="short" value={crowded?.to} />
        <Button>Show it to technicians</Button>
      </ActForm>
    </Plate>
  );
}

function noteRange({ serialFrom, serialTo, modelNumber }: TechnicianNote): string {
  const machines = modelNumber ?? "all models";
  return serialFrom === undefined ? machines : `${machines}, serials ${serialFrom} to ${serialTo}`;
}
