"use server";
import { headers } from "next/headers";
import { forbidden, redirect } from "next/navigation";
import { z } from "zod";
import { safeWay } from "@/app/_people/safe-way";
import { comesFromThisSite } from "@/app/_people/same-origin";
import { describeRefusal, signInByCode, signInByPassword } from "@/app/_people/sign-in";

export interface SignInState {
  readonly problem: string | undefined;
  readonly email: string;
}

const passwordForm = z.object({
  email: z.string().trim().max(320),
  password: z.string().max(1000),
  to: z.string().max(4000),
});

export async function signIn(_previous: SignInState, form: FormData): Promise<SignInState> {
  if (!comesFromThisSite(await headers())) forbidden();
  const read = passwordForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problem: "Type your e-mail address and your password.", email: "" };
  const { email, password, to } = read.data;
  const result = await signInByPassword({ email, password });
  if (result.kind === "signed in") redirect(safeWay(to));
  if (result.kind === "code needed") redirect(`/sign-in/code?to=${encodeURIComponent(safeWay(to))}`);
  return { problem: describeRefusal(result), email };
}

export interface CodeState {
  readonly problem: string | undefined;
}

const codeForm = z.object({ code: z.string().trim().max(100), to: z.string().max(4000) });

/** The second factor, or a recovery code in its place. */
export async function showCode(_previous: CodeState, form: FormData): Promise<CodeState> {
  if (!comesFromThisSite(await headers())) forbidden();
  const read = codeForm.safeParse(Object.fromEntries(form));
  if (!read.success) return { problem: "Type the six digits that your authenticator shows now." };
  const result = await signInByCode(read.data.code);
  if (result.kind === "signed in") redirect(safeWay(read.data.to));
  if (result.kind === "begin anew") redirect("/sign-in");
  return { problem: describeRefusal(result) };
}
