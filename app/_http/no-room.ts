import { problem } from "./problem";

/** Of the operating system and of the database: nothing fits on the disk any more. */
const codes = new Set(["ENOSPC", "EDQUOT", "53100"]);

/** True where the error, or what caused it, says that a disk is full. */
export function isNoRoom(error: unknown): boolean {
  for (let at = error; at instanceof Error; at = at.cause) {
    if ("code" in at && typeof at.code === "string" && codes.has(at.code)) return true;
  }
  return false;
}

export function noRoom(): Response {
  return problem(
    507,
    "No room on the disk",
    "Nothing was stored. Free some room on the computer that runs the site, and send it again.",
  );
}
