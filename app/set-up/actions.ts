"use server";
import { headers } from "next/headers";
import { forbidden, notFound, redirect } from "next/navigation";
import { z } from "zod";
import { comesFromThisSite } from "@/app/_people/same-origin";
import { isSetUpCode, setUpCodeNeeded } from "@/app/_people/set-up-code";
import { signInByPassword } from "@/app/_people/sign-in";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { readOnly } from "@/db/client";
import { loadWhetherAnybody } from "@/db/queries/people";
import { loadShop } from "@/db/queries/shop";
import { addFirstOwner } from "@/db/writes/people/add-person";
import { passwordProblem } from "@/lib/people/password-rules";

export interface SetUpState {
  readonly problems: readonly FieldProblem[];
  readonly name: string;
  readonly email: string;
}

const setUpForm = z.object({
  code: z.string().trim().max(100).default(""),
  name: z.string().trim().max(100),
  email: z.string().trim().max(320),
  password: z.string().max(1000),
});

/** Makes the owner, while nobody is here. */
export async function setUp(_previous: SetUpState, form: FormData): Promise<SetUpState> {
  if (!comesFromThisSite(await headers())) forbidden();
  if (await readOnly(loadWhetherAnybody)) notFound();
  const read = setUpForm.safeParse(Object.fromEntries(form));
  if (!read.success)
    return { problems: [{ text: "The form did not arrive whole. Load this page again." }], name: "", email: "" };
  const { code, name, email, password } = read.data;
  if (setUpCodeNeeded() && !isSetUpCode(code))
    return {
      problems: [{ field: "code", text: "This is not the code that the server printed when it started." }],
      name,
      email,
    };
  const company = (await readOnly(loadShop)).name;
  const problem = passwordProblem(password, { name, email, company });
  const problems: FieldProblem[] = [
    ...(name === "" ? [{ field: "name", text: "Your name is blank. It stands beside what you do." }] : []),
    ...(z.email().safeParse(email).success
      ? []
      : [{ field: "email", text: "This is no e-mail address. Write it as name@company.com." }]),
    ...(problem === undefined ? [] : [{ field: "password", text: problem }]),
  ];
  if (problems.length > 0) return { problems, name, email };
  if (!(await addFirstOwner({ name, email, password }))) notFound();
  const result = await signInByPassword({ email, password });
  redirect(result.kind === "signed in" ? "/today" : "/sign-in");
}
