"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { markSignal, undoMark } from "@/db/writes/signals/mark-signal";
import { liftTechnicianNote, writeTechnicianNote } from "@/db/writes/signals/technician-note";
import { readDay } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import { signalHref } from "../signal-words";

export interface MarkState {
  readonly problems: readonly string[];
  readonly said?: string;
}

const broken: MarkState = { problems: ["The form did not arrive whole. Open the page again."] };

const markForm = z.object({
  key: z.string().min(1),
  asOf: z.string(),
  kind: z.enum(["watch", "not_now", "explain", "dismiss"]),
  reason: z.string().max(2000),
});

export async function mark(_previous: MarkState, form: FormData): Promise<MarkState> {
  const person = await mayDo("repeats.mark");
  const read = markForm.safeParse(Object.fromEntries(form));
  const asOf = read.success ? readDay(read.data.asOf) : undefined;
  if (!read.success || asOf === undefined) return broken;
  const { key: signalKey, kind, reason } = read.data;
  const result = await markSignal({ signalKey, kind, reason, by: person.name, asOf });
  if (result.kind === "reason-missing")
    return { problems: ["Write the reason: later readers see it instead of the signal."] };
  if (result.kind === "no-such-signal")
    return { problems: ["The list was worked out anew and no longer has this line. Open Repeats again."] };
  refresh(signalKey);
  return { problems: [], said: "Noted." };
}

const undoForm = z.object({ key: z.string().min(1), mark: z.coerce.number().int().positive() });

export async function undo(_previous: MarkState, form: FormData): Promise<MarkState> {
  const person = await mayDo("repeats.mark");
  const read = undoForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  const result = await undoMark({ markId: read.data.mark, by: person.name });
  refresh(read.data.key);
  if (result.kind === "no-such-mark") return { problems: ["There is nothing to take back any more."] };
  return { problems: [], said: "Taken back." };
}

const noteForm = z.object({
  key: z.string().min(1),
  maker: z.string().min(1),
  model: z.string(),
  component: z.string(),
  words: z.string().max(2000),
  from: z.string().max(40),
  to: z.string().max(40),
});

export async function writeNote(_previous: MarkState, form: FormData): Promise<MarkState> {
  const person = await mayDo("repeats.mark");
  const read = noteForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  const { key, maker, model, component, words } = read.data;
  const [from, to] = [normalised(read.data.from), normalised(read.data.to)];
  if ((from === "") !== (to === ""))
    return { problems: ["Give both ends of the range of serials, or neither for all of them."] };
  const result = await writeTechnicianNote({
    maker,
    modelNumber: model === "" ? undefined : model,
    serials: from === "" ? undefined : { from, to },
    component: component === "" ? undefined : component,
    words,
    signalKey: key,
    by: person.name,
  });
  if (result.kind === "no-words") return { problems: ["Write what technicians should know."] };
  if (result.kind === "serials-reversed")
    return { problems: [`The range runs backwards: ${from} comes after ${to}. Change the two ends.`] };
  if (result.kind === "no-such-maker") return broken;
  refresh(key);
  return { problems: [], said: "Technicians see it on the check sheets of those serials." };
}

const liftForm = z.object({ key: z.string().min(1), note: z.coerce.number().int().positive() });

export async function liftNote(_previous: MarkState, form: FormData): Promise<MarkState> {
  const person = await mayDo("repeats.mark");
  const read = liftForm.safeParse(Object.fromEntries(form));
  if (!read.success) return broken;
  await liftTechnicianNote(read.data.note, person.name);
  refresh(read.data.key);
  return { problems: [], said: "The note no longer shows." };
}

function refresh(key: string): void {
  revalidatePath("/repeats");
  revalidatePath(signalHref(key));
}
