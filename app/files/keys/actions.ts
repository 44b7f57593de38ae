"use server";
import { revalidatePath } from "next/cache";
import { z } from "zod";
import { makeApiKey, revokeApiKey } from "@/db/writes/api-keys";

export type KeyState =
  | { readonly kind: "untouched" }
  | { readonly kind: "refused"; readonly sentence: string }
  | { readonly kind: "made"; readonly name: string; readonly key: string };

const makeForm = z.object({ name: z.string().trim().min(1).max(100) });
const endForm = z.object({ key: z.coerce.number().int().positive() });

export async function makeKey(_previous: KeyState, form: FormData): Promise<KeyState> {
  const read = makeForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { kind: "refused", sentence: "Name the program, in up to 100 characters." };
  const { key } = await makeApiKey(read.data.name);
  revalidatePath("/files/keys");
  return { kind: "made", name: read.data.name, key };
}

/** From now on the key opens nothing; what it sent stays. */
export async function endKey(form: FormData): Promise<void> {
  await revokeApiKey(endForm.parse(Object.fromEntries(form)).key);
  revalidatePath("/files/keys");
}
