import { cookies, headers } from "next/headers";
import { readOnly } from "@/db/client";
import { loadPerson } from "@/db/queries/people";
import { loadShop } from "@/db/queries/shop";
import { noteSignIn } from "@/db/writes/people/note-sign-in";
import { endSession, markHalfSignedIn } from "@/db/writes/people/sessions";
import { countTry, forgetTries, type Try, type TryVerdict } from "@/db/writes/people/sign-in-tries";
import { formatCounted } from "@/lib/format/format-count";
import type { SignInOutcome } from "@/lib/people/sign-in-outcome";
import { matchesAuthenticator } from "./authenticator";
import { type FreshSession, freshSession } from "./fresh-session";
import { keepKnownDevice, knownDevice } from "./known-device";
import { loadSession } from "./load-signed-in";

type Refusal = { readonly kind: "no match" | "wrong code" } | Exclude<TryVerdict, { readonly kind: "go on" }>;
type SignedInNow = { readonly kind: "signed in" };

/** First factor. Unknown addresses are answered, counted and slowed down as known ones are. */
export async function signInByPassword(typed: {
  readonly email: string;
  readonly password: string;
}): Promise<SignedInNow | { readonly kind: "code needed" } | Refusal> {
  const asked = await tryOf(typed.email);
  const verdict = await countTry(asked, Date.now());
  if (verdict.kind !== "go on") return await noted(asked, "held back", verdict);
  const session = await freshSession(typed);
  if (session === undefined) return await noted(asked, "no match", { kind: "no match" });
  const { person, isDemo } = await readOnly(async (db) => ({
    person: await loadPerson(db, session.personId),
    isDemo: (await loadShop(db)).demo,
  }));
  if (person === undefined || person.endedAt !== undefined || (person.demo && !isDemo)) {
    await endSession(session.personId, session.sessionId);
    return await noted(asked, "no match", { kind: "no match" });
  }
  await markHalfSignedIn(session.sessionId, person.hasSecondFactor);
  await keepCookies(session);
  if (person.hasSecondFactor) return await noted(asked, "password shown", { kind: "code needed" });
  return await done(asked);
}

/** Second factor, of whoever showed the first. Wrong codes count as wrong passwords do. */
export async function signInByCode(code: string): Promise<SignedInNow | { readonly kind: "begin anew" } | Refusal> {
  const session = await loadSession(await headers());
  if (session === undefined) return { kind: "begin anew" };
  if (!session.half) return { kind: "signed in" };
  const asked = await tryOf(session.person.email);
  const verdict = await countTry(asked, Date.now());
  if (verdict.kind !== "go on") return await noted(asked, "held back", verdict);
  if (!(await matchesAuthenticator(session.person.id, code, { orRecoveryCode: true })))
    return await noted(asked, "wrong code", { kind: "wrong code" });
  await markHalfSignedIn(session.person.sessionId, false);
  return await done(asked);
}

/** What a person is told; nothing tells whether an address is known here. */
export function describeRefusal(result: Refusal): string {
  switch (result.kind) {
    case "no match":
      return "E-mail and password do not belong together, or nobody of that address may sign in.";
    case "wrong code":
      return "These are not the digits that your authenticator shows now, or they were used before.";
    case "wait":
      return `That was wrong several times. Try again in ${formatCounted(Math.ceil(result.ms / 1000), "second")}.`;
    case "only from a known device":
      return "There were too many wrong tries. Sign in from a device that you used before, or ask the owner for a link to a new password.";
  }
}

async function done(asked: Try): Promise<SignedInNow> {
  await forgetTries(asked, Date.now());
  await keepKnownDevice(asked);
  return await noted(asked, "signed in", { kind: "signed in" });
}

/** The result, once it is in the list of who signed in. */
async function noted<Result>({ email, address, device }: Try, outcome: SignInOutcome, result: Result): Promise<Result> {
  await noteSignIn({ email, outcome, cameFrom: address, knownDevice: device !== undefined });
  return result;
}

async function tryOf(email: string): Promise<Try> {
  const requested = await headers();
  return { email, address: requested.get("ohmsworth-peer") ?? "unknown", device: await knownDevice(email) };
}

async function keepCookies({ cookies: set }: FreshSession): Promise<void> {
  const jar = await cookies();
  for (const { name, value, options } of set) jar.set(name, value, options);
}
