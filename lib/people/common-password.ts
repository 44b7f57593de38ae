import { createHash } from "node:crypto";
import { commonPasswordPrints, printBytes, shortestCommonPassword } from "./common-password-prints";

let prints: ReadonlySet<string> | undefined;

/**
 * Whether a password is one of a list of common ones, or one of them with a few characters at its ends.
 * @param letters  its letters and digits, small, in one form (NFKC)
 * @param few  so many characters beside it make it no other password
 */
export function isCommonPassword(letters: string, few: number): boolean {
  const all = [...letters];
  for (let from = 0; from <= few; from++) {
    for (let beside = from; beside <= few; beside++) {
      const word = all.slice(from, all.length - (beside - from));
      if (word.length >= shortestCommonPassword && isListed(word.join(""))) return true;
    }
  }
  return false;
}

function isListed(word: string): boolean {
  prints ??= readPrints();
  return prints.has(createHash("sha256").update(word).digest().subarray(0, printBytes).toString("hex"));
}

function readPrints(): ReadonlySet<string> {
  const bytes = Buffer.from(commonPasswordPrints, "base64");
  return new Set(
    Array.from({ length: bytes.length / printBytes }, (_, n) =>
      bytes.subarray(n * printBytes, (n + 1) * printBytes).toString("hex"),
    ),
  );
}
