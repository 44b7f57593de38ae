import { randomInt } from "node:crypto";
import process from "node:process";

const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789"; // no letter that looks like a figure

/** What the first set-up asks for while nobody is here and others than this computer can reach it; "" where it asks for none. */
export function setUpCodeFor({ people, host }) {
  if (people !== "nobody yet" || (isLoopback(host) && !process.env.OHMSWORTH_ORIGIN)) return "";
  const code = Array.from({ length: 12 }, () => letters[randomInt(letters.length)]).join("");
  return code.replaceAll(/(.{4})(?=.)/g, "$1-");
}

export function isLoopback(host) {
  return host === "localhost" || host === "::1" || /^127(\.\d{1,3}){3}$/.test(host);
}
