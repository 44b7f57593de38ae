import { headers } from "next/headers";
import { forbidden, notFound, redirect } from "next/navigation";
import { readOnly } from "@/db/client";
import { loadWhetherOwnJob } from "@/db/queries/own-job";
import { may } from "@/lib/people/permissions";
import type { SignedIn } from "./load-signed-in";
import { type GuardedPage, pageActs } from "./route-acts";
import { lacksSecondFactor } from "./second-factor-rule";
import { signedIn } from "./signed-in";

/**
 * The first line of every page: who opens it, or the end of it. Whoever is not signed in is sent to do so and comes back;
 * another role is told who may, before anything is looked up.
 */
export async function mayOpen(page: GuardedPage): Promise<SignedIn> {
  const person = await signedIn();
  if (person === undefined) redirect(signInHref(await headers()));
  const act = pageActs[page];
  if (!may(person.role, act)) forbidden();
  if (await lacksSecondFactor(person, act)) redirect("/account/second-factor?first=yes");
  return person;
}

/** The same for a page of one job: to a technician, the job of another is not there. */
export async function mayOpenJob(page: GuardedPage, jobNumber: string): Promise<SignedIn> {
  const person = await mayOpen(page);
  if (!(await isOwnJob(person, jobNumber))) notFound();
  return person;
}

export async function isOwnJob({ role, technician }: SignedIn, jobNumber: string): Promise<boolean> {
  if (role !== "technician") return true;
  return await readOnly((db) => loadWhetherOwnJob(db, { jobNumber, technician }));
}

/** Signing in with the way back; the server notes the address with each request (see ../_health/watch-requests). */
export function signInHref(requested: Headers): string {
  const address = requested.get(addressHeader) ?? "";
  if (!address.startsWith("/") || address.startsWith("//") || address === "/") return "/sign-in";
  const url = new URL(address, "http://here");
  url.searchParams.delete("_rsc");
  return `/sign-in?to=${encodeURIComponent(`${url.pathname}${url.search}`)}`;
}

const addressHeader = "ohmsworth-address";
