import { headers } from "next/headers";
import { forbidden, notFound, redirect } from "next/navigation";
import { actAs } from "@/db/actor";
import { type Act, may } from "@/lib/people/permissions";
import type { SignedIn } from "./load-signed-in";
import { isOwnJob, signInHref } from "./may-open";
import { comesFromThisSite } from "./same-origin";
import { lacksSecondFactor } from "./second-factor-rule";
import { signedIn } from "./signed-in";

/** The first line of every action: who does it, or the end of it. An action can be called from anywhere, not from its page only. */
export async function mayDo(act: Act): Promise<SignedIn> {
  const requested = await headers();
  if (!comesFromThisSite(requested)) forbidden();
  const person = await signedIn();
  if (person === undefined) redirect(signInHref(requested));
  if (!may(person.role, act)) forbidden();
  if (await lacksSecondFactor(person, act)) redirect("/account/second-factor?first=yes");
  actAs(person.name);
  return person;
}

/** The same for an act on one job: to a technician, the job of another is not there. */
export async function mayDoOnJob(act: Act, jobNumber: string): Promise<SignedIn> {
  const person = await mayDo(act);
  if (!(await isOwnJob(person, jobNumber))) notFound();
  return person;
}
