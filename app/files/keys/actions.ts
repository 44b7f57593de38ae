"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { makeApiKey, revokeApiKey } from "@/db/writes/api-keys";
import { type KeyScope, keyDays, keyScopeKeys, keyScopes } from "@/lib/people/key-scope";

export type KeyState =
  | { readonly kind: "untouched" }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "made"; readonly name: string; readonly may: string; readonly key: string };

const makeForm = z.object({
  name: z.string().trim().min(1).max(100),
  scope: z.enum(keyScopeKeys as [KeyScope, ...KeyScope[]]), // never empty
  days: z.coerce.number().refine((days) => keyDays.some((each) => each === days)),
});
const endForm = z.object({ key: z.coerce.number().int().positive() });

export async function makeKey(_previous: KeyState, form: FormData): Promise<KeyState> {
  const person = await mayDo("keys.keep");
  const read = makeForm.safeParse(Object.fromEntries(form));
  if (!read.success)
    return {
      kind: "refused",
      sentence: "Name the program, in up to 100 characters, and choose what it may and for how long.",
    };
  const { name, scope } = read.data;
  const { key } = await makeApiKey({ ...read.data, madeBy: person.name });
  revalidatePath("/files/keys");
  return { kind: "made", name, may: keyScopes[scope], key };
}

/** From now on the key opens nothing; what it sent stays. */
export async function endKey(form: FormData): Promise<void> {
  await mayDo("keys.keep");
  await revokeApiKey(endForm.parse(Object.fromEntries(form)).key);
  revalidatePath("/files/keys");
}
