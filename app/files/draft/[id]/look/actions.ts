"use server";
import { redirect } from "next/navigation";
import { mayDo } from "@/app/_people/may-do";
import type { FormWishes } from "@/lib/intake/tables/look-at-table";
import type { TableForm } from "@/lib/intake/tables/table-form";
import { matchingAsSaid } from "../../../_draft/as-said";
import { keepNotes, openDraft } from "../../../_draft/open-draft";
import { addressOf } from "../../../_draft/where-it-stands";
import { beginTask } from "../../../_work/begin-task";
import { readLookForm } from "./read-look-form";

/** Keeps how the file is to be read. Another form is read at once and shown; otherwise its columns are matched next. */
export async function keepLook(form: FormData): Promise<void> {
  await mayDo("files.load");
  const read = readLookForm(form);
  if (read === undefined) redirect("/files");
  const { draft: draftId, wishes, said, onward } = read;
  const draft = await openDraft(draftId);
  if (draft === undefined) redirect(addressOf(draftId));
  const { seen, guess } = draft.notes;
  const differing = wishesBeside(wishes, seen?.form, draft.notes.wishes);
  if (seen === undefined || guess === undefined || onward === "again" || isOther(differing, seen.form)) {
    await keepNotes(draftId, { wishes: differing, said }, { step: "look" });
    beginTask(draftId, "look");
    redirect(addressOf(draftId));
  }
  const matching = matchingAsSaid(draft.step === "look" ? guess.matching : (draft.matching ?? guess.matching), said);
  await keepNotes(draftId, { wishes: differing, said, checked: undefined }, { step: "match", matching });
  redirect(addressOf(draftId, "columns"));
}

/** What agrees with the guess stays a guess with its reason, unless it was wished before or had to be asked. */
function wishesBeside(wishes: FormWishes, form: TableForm | undefined, before: FormWishes): FormWishes {
  const guessed: Readonly<Record<string, unknown>> = { ...form };
  const earlier: Readonly<Record<string, unknown>> = { ...before };
  return Object.fromEntries(
    Object.entries(wishes).filter(
      ([name, wish]) => wish !== undefined && (guessed[name] !== wish || earlier[name] !== undefined),
    ),
  );
}

function isOther(wishes: FormWishes, form: TableForm): boolean {
  const read: Readonly<Record<string, unknown>> = { ...form };
  return Object.entries(wishes).some(([name, wish]) => read[name] !== wish);
}
