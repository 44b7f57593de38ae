import { SettingsError } from "@/db/settings-error";
import { secretProblem } from "@/lib/people/secret-strength";

/** @throws SettingsError where there is none or a weak one; the command that starts the site has looked before */
export function serverSecret(): string {
  const secret = process.env.OHMSWORTH_SECRET ?? "";
  const problem = secretProblem(secret);
  if (problem !== undefined) throw new SettingsError(`OHMSWORTH_SECRET is too weak: ${problem}.`);
  return secret;
}
