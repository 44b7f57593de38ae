import { isCommonPassword } from "./common-password";

/** Characters, counted as people see them. 15 because it may be the only factor (NIST SP 800-63B-4). */
export const shortestPassword = 15;
/** Long enough for any sentence; a bound only so that hashing has one. */
export const longestPassword = 256;

interface About {
  readonly name: string;
  readonly email: string;
  readonly company: string;
}

/**
 * What is wrong with a new password; undefined where nothing is. No rule asks for digits or signs and none expires it:
 * such rules make passwords weaker. Refused are short ones, common ones, runs and repetitions, and those that are little
 * more than the name of the person, the company or this program.
 */
export function passwordProblem(password: string, about: About): string | undefined {
  const plain = normalPassword(password);
  const length = [...plain].length;
  if (length < shortestPassword)
    return `It has ${length} characters. Use ${shortestPassword} or more; a few words in a row are easy to remember.`;
  if (length > longestPassword) return `It has ${length} characters. Use ${longestPassword} at most.`;
  const letters = plain.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
  if (isRepeated(letters) || isRun(letters))
    return "It is a repetition or a run of keys. Choose words that do not follow from each other.";
  if (isCommonPassword(letters, needed - 1) || common.some((word) => leftOver(letters, [word]) < needed))
    return "It is one of the passwords that are tried first. Choose another.";
  if (leftOver(letters, wordsAbout(about)) < needed)
    return "It is little more than your name, the company's or this program's. Choose other words.";
  return undefined;
}

/** One form for all ways in which keyboards write the same letters (NFKC), so that a password is the same on each. */
export function normalPassword(password: string): string {
  return password.normalize("NFKC");
}

/** Characters that must be left once known words are taken out. Own choice. */
const needed = 7;

/** Heads of published lists of the commonest passwords, from memory, shorter than those of ./common-password; longer ones are made of these. */
const common = [
  "password",
  "passwort",
  "letmein",
  "welcome",
  "iloveyou",
  "administrator",
  "trustno1",
  "qwertyuiop",
  "qwerty",
  "1q2w3e4r",
  "1qaz2wsx",
  "changeme",
  "correcthorsebatterystaple",
];

const keyRows = [
  "01234567890123456789",
  "qwertyuiopasdfghjklzxcvbnm",
  "qwertzuiopasdfghjklyxcvbnm",
  "abcdefghijklmnopqrstuvwxyz",
];

function isRepeated(letters: string): boolean {
  return Array.from({ length: Math.floor(letters.length / 2) }, (_, i) => i + 1).some(
    (size) =>
      letters ===
      letters
        .slice(0, size)
        .repeat(Math.ceil(letters.length / size))
        .slice(0, letters.length),
  );
}

function isRun(letters: string): boolean {
  return keyRows.some((row) => row.includes(letters) || [...row].reverse().join("").includes(letters));
}

function wordsAbout({ name, email, company }: About): readonly string[] {
  return [name, email.split("@")[0] ?? "", company, "ohmsworth", "warranty"]
    .flatMap((text) =>
      text
        .normalize("NFKC")
        .toLowerCase()
        .split(/[^\p{L}\p{N}]+/u),
    )
    .filter((word) => word.length >= 4);
}

/** How much remains when each of the words is taken out wherever it stands. */
function leftOver(letters: string, words: readonly string[]): number {
  return [...words.reduce((left, word) => left.replaceAll(word, ""), letters)].length;
}
