// Writes lib/people/common-password-prints.ts from a list of common passwords, commonest first:
//   npm pack @zxcvbn-ts/language-common@4.1.3 && tar xf zxcvbn-ts-language-common-4.1.3.tgz
//   node tests/people/common-passwords.mjs package/src/passwords.json
import { createHash } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";

const [from = ""] = process.argv.slice(2);
const shortest = 9;
const bytes = 5;

const words = JSON.parse(readFileSync(from, "utf8"));
const letters = words.map((word) =>
  word
    .normalize("NFKC")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]/gu, ""),
);
const kept = [...new Set(letters.filter((word) => [...word].length >= shortest))];
const prints = kept.map((word) => createHash("sha256").update(word).digest().subarray(0, bytes)).sort(Buffer.compare);
const lines = Buffer.concat(prints)
  .toString("base64")
  .match(/.{1,112}/g);
const text = `/**
 * The first five bytes of the SHA-256 of each common password of nine letters and digits or more, in order, as base64: ${kept.length}
 * of the ${words.length} of the package @zxcvbn-ts/language-common 4.1.3 (MIT licence, zxcvbn-ts contributors), in small letters and
 * without signs. Prints and not the words, since some name people or are foul. Written by tests/people/common-passwords.mjs.
 */
export const commonPasswordPrints = [
${lines.map((line) => `  "${line}",`).join("\n")}
].join("");

export const shortestCommonPassword = ${shortest};
export const printBytes = ${bytes};
`;
writeFileSync("lib/people/common-password-prints.ts", text);
console.log(`${kept.length} of ${words.length}`);
