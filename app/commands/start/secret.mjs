import { randomBytes } from "node:crypto";
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import process from "node:process";
import { Refusal, say } from "./say.mjs";

const file = ".data/secret";
const setting = "OHMSWORTH_SECRET";

/**
 * What sessions are signed and second factors sealed with: from the environment, or a file beside the embedded database,
 * made at the first start and readable by this user only. A weak one is refused, wherever it comes from.
 */
export async function keepSecret() {
  const { secretProblem, secretRecipe } = await import("../../../lib/people/secret-strength.ts");
  const given = process.env[setting]?.trim() ?? "";
  const secret = given === "" ? keptSecret() : given;
  const problem = secretProblem(secret);
  if (problem !== undefined)
    throw new Refusal(
      `${given === "" ? `The secret in ${file}` : setting} is too weak: ${problem}. Make one with: ${secretRecipe}`,
    );
  process.env[setting] = secret;
}

function keptSecret() {
  if (existsSync(file)) return readFileSync(file, "utf8").trim();
  mkdirSync(dirname(file), { recursive: true });
  const made = randomBytes(32).toString("base64url");
  writeFileSync(file, `${made}\n`, { mode: 0o600, flag: "wx" });
  chmodSync(file, 0o600);
  if (process.env.DATABASE_URL)
    say(
      `a secret was made in ${file}. Keep that file, or set ${setting}: with another one everybody signs in anew and second factors are lost.`,
    );
  return made;
}
