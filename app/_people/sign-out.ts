"use server";
import { cookies, headers } from "next/headers";
import { forbidden, redirect } from "next/navigation";
import { noteSignIn } from "@/db/writes/people/note-sign-in";
import { knownDevice as knownDeviceOf } from "./known-device";
import { loadSignedIn } from "./load-signed-in";
import { comesFromThisSite } from "./same-origin";
import { sessionCookieName } from "./session-cookie";
import { signInLibrary } from "./sign-in-library";

/** Ends the session on the server, so that its mark opens nothing any more wherever it was copied to. */
export async function signOut(): Promise<void> {
  const requested = await headers();
  if (!comesFromThisSite(requested)) forbidden();
  const person = await loadSignedIn(requested);
  if (person !== undefined) {
    const cameFrom = requested.get("ohmsworth-peer") ?? "unknown";
    const knownDevice = (await knownDeviceOf(person.email)) !== undefined;
    await noteSignIn({ email: person.email, outcome: "signed out", cameFrom, knownDevice });
  }
  const { api } = await signInLibrary();
  await api.signOut({ headers: requested });
  (await cookies()).delete({ name: sessionCookieName(), path: "/" });
  redirect("/sign-in?done=out");
}
