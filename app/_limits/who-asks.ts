import { createHash } from "node:crypto";
import type { IncomingMessage } from "node:http";
import { sessionMarkIn } from "@/app/_people/session-cookie";
import { whoseSession } from "./whose-sessions";

/** In whose line a request stands: a person's, a program's by its key, or that of an address from which nobody is signed in. */
export function whoAsks({ headers }: Pick<IncomingMessage, "headers">): string {
  const mark = sessionMarkIn(headers.cookie);
  if (mark !== undefined) return `person ${whoseSession(mark) ?? mark}`;
  if (headers.authorization !== undefined)
    return `key ${createHash("sha256").update(headers.authorization).digest("base64")}`;
  return `address ${headers["ohmsworth-peer"] ?? "unknown"}`;
}
