"use server";
import { headers } from "next/headers";
import { forbidden, redirect } from "next/navigation";
import { z } from "zod";
import { comesFromThisSite } from "@/app/_people/same-origin";
import { readOnly } from "@/db/client";
import { findInvitation } from "@/db/queries/invitations";
import { loadShop } from "@/db/queries/shop";
import { acceptInvitation } from "@/db/writes/people/accept-invitation";
import { passwordProblem } from "@/lib/people/password-rules";

export interface JoinState {
  readonly problem: string | undefined;
}

const joinForm = z.object({ token: z.string().min(1).max(200), password: z.string().max(1000) });

/** Uses the link with the password that was chosen. Signing in comes after it, so that a second factor is asked for as ever. */
export async function join(_previous: JoinState, form: FormData): Promise<JoinState> {
  if (!comesFromThisSite(await headers())) forbidden();
  const read = joinForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problem: "The form did not arrive whole. Open the link again." };
  const { token, password } = read.data;
  const { invitation, company } = await readOnly(async (db) => ({
    invitation: await findInvitation(db, token),
    company: (await loadShop(db)).name,
  }));
  if (invitation === undefined) redirect(`/join/${encodeURIComponent(token)}`);
  const problem = passwordProblem(password, { ...invitation, company });
  if (problem !== undefined) return { problem };
  const email = await acceptInvitation(token, password);
  redirect(email === undefined ? `/join/${encodeURIComponent(token)}` : "/sign-in?done=password");
}
