"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { changePasswordOf } from "@/db/writes/people/change-password";
import { endSession, endSessions } from "@/db/writes/people/sessions";
import { passwordProblem } from "@/lib/people/password-rules";

export interface AccountState {
  readonly problems: readonly FieldProblem[];
  readonly said?: string;
}

const passwordForm = z.object({ current: z.string().max(1000), password: z.string().max(1000) });

/** Takes a new password from whoever knows the old one, and ends the other sessions. */
export async function changePassword(_previous: AccountState, form: FormData): Promise<AccountState> {
  const person = await mayDo("account.keep");
  const read = passwordForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problems: [{ text: "The form did not arrive whole. Load this page again." }] };
  const { current, password } = read.data;
  const company = (await readOnly(loadShop)).name;
  const problem = passwordProblem(password, { ...person, company });
  if (problem !== undefined) return { problems: [{ field: "password", text: problem }] };
  const changed = await changePasswordOf(person.id, { current, password, keepSession: person.sessionId });
  if (!changed) return { problems: [{ field: "current", text: "This is not the password that you sign in with." }] };
  revalidatePath("/account");
  return { problems: [], said: "The new password holds. Other sessions have ended." };
}

export async function endOneSession(form: FormData): Promise<void> {
  const person = await mayDo("account.keep");
  await endSession(person.id, String(form.get("session")));
  revalidatePath("/account");
}

export async function endOtherSessions(): Promise<void> {
  const person = await mayDo("account.keep");
  await endSessions(person.id, person.sessionId);
  revalidatePath("/account");
}
