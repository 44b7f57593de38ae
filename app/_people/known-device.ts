import { createHmac, randomBytes, timingSafeEqual } from "node:crypto";
import { cookies } from "next/headers";
import type { Try } from "@/db/writes/people/sign-in-tries";
import { isServedSecurely } from "./own-origin";

const oneYear = 365 * 24 * 60 * 60;

/** The mark of a device from which somebody of this address has signed in before; undefined for any other. */
export async function knownDevice(email: string): Promise<string | undefined> {
  const [device, seal] = ((await cookies()).get(cookieName())?.value ?? "").split(".");
  if (device === undefined || seal === undefined) return undefined;
  const [given, wanted] = [Buffer.from(seal), Buffer.from(sealOf(device, email))];
  return given.length === wanted.length && timingSafeEqual(given, wanted) ? device : undefined;
}

/** Marks this device, so that strangers who try this account elsewhere never shut its owner out. */
export async function keepKnownDevice({ email, device = randomBytes(16).toString("base64url") }: Try): Promise<void> {
  (await cookies()).set(cookieName(), `${device}.${sealOf(device, email)}`, {
    httpOnly: true,
    sameSite: "lax",
    secure: isServedSecurely(),
    path: "/",
    maxAge: oneYear,
  });
}

const cookieName = () => (isServedSecurely() ? "__Host-ohmsworth-device" : "ohmsworth-device");

function sealOf(device: string, email: string): string {
  return createHmac("sha256", process.env.OHMSWORTH_SECRET ?? "")
    .update(`device\n${device}\n${email.trim().toLowerCase()}`)
    .digest("base64url");
}
