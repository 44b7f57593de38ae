import { timingSafeEqual } from "node:crypto";

/** Whether whoever makes the owner must show the code that the server printed: where others than this computer can reach it. */
export function setUpCodeNeeded(): boolean {
  return expected() !== "";
}

export function isSetUpCode(typed: string): boolean {
  const [given, wanted] = [Buffer.from(plain(typed)), Buffer.from(plain(expected()))];
  return wanted.length > 0 && given.length === wanted.length && timingSafeEqual(given, wanted);
}

/** Made anew at each start by the command that starts the server. */
const expected = () => process.env.OHMSWORTH_SET_UP_CODE ?? "";

const plain = (code: string) => code.replaceAll(/[\s-]/g, "").toUpperCase();
