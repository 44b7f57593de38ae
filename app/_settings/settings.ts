// Every setting comes from the environment, is read once when the program starts, and is refused in one line where it is
// wrong. None holds a secret by default.
import { z } from "zod";
import { readDatabaseSetting } from "@/db/connection";
import { SettingsError } from "@/db/settings-error";
import { readDay } from "@/lib/calendar/day";
import { secretProblem, secretRecipe } from "@/lib/people/secret-strength";

const blank = (text: string | undefined) => (text === undefined || text.trim() === "" ? undefined : text.trim());
const setting = <T extends z.ZodType>(inner: T) => z.preprocess((text) => blank(text as string | undefined), inner); // the environment holds text
const wordIn = <const T extends readonly [string, ...string[]]>(words: T) =>
  z.enum(words, { error: `it must be ${words.slice(0, -1).join(", ")} or ${words.at(-1)}` });

/** What may be set, apart from DATABASE_URL. README.md lists it for those who host the site. */
export const settingsShape = {
  PORT: setting(
    z
      .string()
      .regex(/^\d{1,5}$/, "it must be a whole number from 1 to 65535")
      .transform(Number)
      .refine((port) => port >= 1 && port <= 65_535, "it must be a whole number from 1 to 65535")
      .optional(),
  ),
  OHMSWORTH_LISTEN: setting(
    z
      .union([z.ipv4(), z.ipv6(), z.literal("localhost")], {
        error: "it must be an address such as 127.0.0.1 or 0.0.0.0",
      })
      .default("127.0.0.1"),
  ),
  OHMSWORTH_PROXY: setting(wordIn(["none", "trusted"]).default("none")),
  /** What sessions are signed with; without it the starter keeps one in `.data/secret`. */
  OHMSWORTH_SECRET: setting(
    z
      .string()
      .superRefine((secret, context) => {
        const problem = secretProblem(secret);
        if (problem !== undefined) context.addIssue(`it is too weak: ${problem}. Make one with: ${secretRecipe}`);
      })
      .optional(),
  ),
  OHMSWORTH_ORIGIN: setting(
    z
      .string()
      .refine(
        (text) => URL.canParse(text) && new URL(text).origin === text && /^https?:/.test(text),
        "it must be how people reach the site, such as https://claims.company.com",
      )
      .optional(),
  ),
  OHMSWORTH_LOG: setting(wordIn(["requests", "failures", "off"]).optional()),
  OHMSWORTH_NIGHTLY: setting(wordIn(["on", "off"]).default("on")),
  /** Where backups lie of which the newest is restored on trial every week. */
  OHMSWORTH_BACKUPS: setting(z.string().optional()),
  OHMSWORTH_TODAY: setting(
    z
      .string()
      .refine((text) => readDay(text) !== undefined, "it must be a day such as 2026-03-31")
      .optional(),
  ),
  /** Set by the starter for the server that it starts. */
  OHMSWORTH_STARTED_BY: setting(z.string().optional()),
  OHMSWORTH_SET_UP_CODE: setting(z.string().optional()),
};

export const setByStarter: readonly string[] = ["OHMSWORTH_STARTED_BY", "OHMSWORTH_SET_UP_CODE"];

const shape = z.object(settingsShape);

export type Settings = z.infer<typeof shape> & { readonly DATABASE_URL: string | undefined };

/**
 * Reads all settings. A name of ours that is none is refused too: it is a word misspelt, and what was meant would not hold.
 * @throws SettingsError with one line that names the setting and says what it must be
 */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const stray = Object.keys(environment).find((name) => name.startsWith("OHMSWORTH_") && !(name in settingsShape));
  if (stray !== undefined) {
    throw new SettingsError(`${stray} is no setting. There are: ${names().join(", ")}.`);
  }
  const read = shape.safeParse(environment);
  if (!read.success) {
    const [issue] = read.error.issues;
    const name = String(issue?.path[0]);
    const value = name === "OHMSWORTH_SECRET" ? "" : ` is “${environment[name] ?? ""}”`; // a secret is never told
    throw new SettingsError(`${name}${value}: ${issue?.message ?? "it cannot be read"}.`);
  }
  return { ...read.data, DATABASE_URL: readDatabaseSetting(environment) };
}

function names(): readonly string[] {
  return ["DATABASE_URL", ...Object.keys(settingsShape).filter((name) => !setByStarter.includes(name))];
}
