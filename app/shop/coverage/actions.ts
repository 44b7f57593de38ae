"use server";
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import { mayDo } from "@/app/_people/may-do";
import { publishPolicy, retirePolicy } from "@/db/writes/coverage/publish-policy";
import { beginPolicyDraft, deletePolicyDraft, savePolicyDraft } from "@/db/writes/coverage/save-policy-draft";
import { documentOfForm } from "@/lib/intake/policy-form/policy-form";
import { versionPath } from "./version-state";

const draftPath = (draftId: number) => `/shop/coverage/draft/${draftId}`;

const startForm = z.object({ from: z.coerce.number().int().positive().optional() });
const draftForm = z.object({ draft: z.coerce.number().int().positive(), revision: z.coerce.number().int().positive() });

export async function startVersion(form: FormData): Promise<void> {
  const person = await mayDo("coverage.change");
  const { from } = startForm.parse(Object.fromEntries(form));
  const draftId = await beginPolicyDraft(from, person.name);
  redirect(draftId === undefined ? "/shop/coverage" : draftPath(draftId));
}

/** Saves whatever was typed. `then` says what comes next: the form again, the form checked, or the review. */
export async function saveDraft(form: FormData): Promise<void> {
  const person = await mayDo("coverage.change");
  const { draft, revision } = draftForm.parse({ draft: form.get("draft"), revision: form.get("revision") });
  const texts = (name: string) => form.getAll(name).filter((value) => typeof value === "string");
  const document = documentOfForm(texts, [...new Set(form.keys())]);
  const saved = await savePolicyDraft({ draftId: draft, revision, document, by: person.name });
  if (saved.kind === "no such draft") redirect("/shop/coverage");
  if (saved.kind === "kept apart") redirect(`${draftPath(saved.draftId)}?apart=${draft}`);
  const then = form.get("then");
  redirect(
    then === "review"
      ? `${draftPath(draft)}/review`
      : `${draftPath(draft)}?saved=${then === "check" ? "checked" : "yes"}`,
  );
}

export async function dropDraft(form: FormData): Promise<void> {
  await mayDo("coverage.change");
  await deletePolicyDraft(z.coerce.number().int().positive().parse(form.get("draft")));
  revalidatePath("/shop/coverage");
  redirect("/shop/coverage");
}

export async function publishDraft(form: FormData): Promise<void> {
  const person = await mayDo("coverage.change");
  const { draft, revision } = draftForm.parse({ draft: form.get("draft"), revision: form.get("revision") });
  const published = await publishPolicy({ draftId: draft, revision, by: person.name });
  switch (published.kind) {
    case "published":
      revalidatePath("/", "layout");
      redirect(`${versionPath(published)}?published=yes`);
      break;
    case "no such draft":
      redirect("/shop/coverage");
      break;
    case "changed since":
      redirect(`${draftPath(draft)}/review?problem=changed`);
      break;
    case "problems":
    case "overlaps":
      redirect(`${draftPath(draft)}/review`);
  }
}

const retireForm = z.object({
  key: z.string().min(1),
  version: z.coerce.number().int().positive(),
  reason: z.string().trim().min(1).max(1000),
});

export async function retireVersion(form: FormData): Promise<void> {
  const person = await mayDo("coverage.change");
  const read = retireForm.safeParse(Object.fromEntries(form));
  if (!read.success) {
    const { key, version } = z.object({ key: z.string(), version: z.coerce.number() }).parse(Object.fromEntries(form));
    redirect(`${versionPath({ key, version })}?problem=retire#retire`);
  }
  await retirePolicy({ ...read.data, by: person.name });
  revalidatePath("/", "layout");
  redirect(versionPath(read.data));
}
