import { randomBytes } from "node:crypto";
import { createOTP } from "@better-auth/utils/otp";
import { symmetricDecrypt, symmetricEncrypt } from "better-auth/crypto";
import { readOnly } from "@/db/client";
import { loadSecondFactor } from "@/db/queries/second-factor";
import { beginSecondFactor, confirmSecondFactor, takeRecoveryCode, takeStep } from "@/db/writes/people/second-factor";
import { serverSecret } from "./server-secret";

/** RFC 6238 as every authenticator has it: SHA-1, six digits, half a minute. */
const stepMs = 30_000;
/** Half-minutes by which the clock of a phone may be off, either way. */
const mostOff = 1;

/** A new secret, kept sealed until its first code is shown. */
export async function beginAuthenticator(person: {
  readonly id: string;
  readonly email: string;
}): Promise<{ readonly secret: string; readonly address: string }> {
  const secret = randomBytes(20).toString("base64url");
  await beginSecondFactor(person.id, await symmetricEncrypt({ key: serverSecret(), data: secret }));
  const address = createOTP(secret).url("Ohmsworth", person.email);
  return { secret: new URL(address).searchParams.get("secret") ?? "", address };
}

/** @returns the recovery codes; undefined where the code is not one of now */
export async function confirmAuthenticator(
  person: { readonly id: string },
  code: string,
): Promise<readonly string[] | undefined> {
  const step = await stepOf(person.id, code, false);
  return step === undefined ? undefined : await confirmSecondFactor(person.id, step);
}

/** Whether somebody shows the second factor now: a code of the present half-minute or its neighbours, each once. */
export async function matchesAuthenticator(
  personId: string,
  code: string,
  { orRecoveryCode }: { readonly orRecoveryCode: boolean } = { orRecoveryCode: false },
): Promise<boolean> {
  const step = await stepOf(personId, code, true);
  if (step !== undefined) return await takeStep(personId, step);
  return orRecoveryCode && (await takeRecoveryCode(personId, code));
}

/** The half-minute whose code this is. All of them are looked at, so that the time it takes tells nothing. */
async function stepOf(personId: string, typed: string, isConfirmed: boolean): Promise<number | undefined> {
  const code = typed.replaceAll(/\s/g, "");
  const stored = await readOnly((db) => loadSecondFactor(db, personId));
  if (stored === undefined || stored.isConfirmed !== isConfirmed || !/^\d{6}$/.test(code)) return undefined;
  const otp = createOTP(await symmetricDecrypt({ key: serverSecret(), data: stored.sealedSecret }));
  const now = Math.floor(Date.now() / stepMs);
  const near = Array.from({ length: 2 * mostOff + 1 }, (_, i) => now - mostOff + i);
  const codes = await Promise.all(near.map((step) => otp.hotp(step)));
  return near.find((_, i) => codes[i] === code);
}
