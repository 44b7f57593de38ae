"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { beginAuthenticator, confirmAuthenticator, matchesAuthenticator } from "@/app/_people/authenticator";
import { mayDo } from "@/app/_people/may-do";
import { removeSecondFactor } from "@/db/writes/people/second-factor";

export type FactorState =
  | { readonly kind: "untouched"; readonly problem?: string }
  | {
      readonly kind: "begun";
      /** For programs that cannot read the picture. */
      readonly secret: string;
      readonly address: string;
      readonly problem?: string;
    }
  | { readonly kind: "done"; readonly recoveryCodes: readonly string[] };

/** Shows the secret to be read by an authenticator. */
export async function beginFactor(): Promise<FactorState> {
  const person = await mayDo("account.keep");
  return { kind: "begun", ...(await beginAuthenticator(person)) };
}

const codeForm = z.object({ code: z.string().trim().max(100) });

/** The first code that the authenticator shows proves that it has the secret. */
export async function confirmFactor(previous: FactorState, form: FormData): Promise<FactorState> {
  const person = await mayDo("account.keep");
  if (previous.kind !== "begun") return { kind: "untouched" };
  const read = codeForm.safeParse(Object.fromEntries(form));
  const codes = read.success ? await confirmAuthenticator(person, read.data.code) : undefined;
  if (codes === undefined)
    return {
      ...previous,
      problem: "These are not the digits that it shows now. Type the six that stand there, before they change.",
    };
  return { kind: "done", recoveryCodes: codes }; // nothing is drawn anew: the codes must stay to be read
}

/** Takes the second factor off, with one of its codes. */
export async function removeFactor(_previous: FactorState, form: FormData): Promise<FactorState> {
  const person = await mayDo("account.keep");
  const read = codeForm.safeParse(Object.fromEntries(form));
  if (!read.success || !(await matchesAuthenticator(person.id, read.data.code)))
    return {
      kind: "untouched",
      problem: "These are not the digits that your authenticator shows now, or they were used before.",
    };
  await removeSecondFactor(person.id);
  revalidatePath("/account", "layout");
  return { kind: "untouched" };
}
