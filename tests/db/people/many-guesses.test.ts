// A thousand wrong tries on one account and ten thousand over five hundred, each from one place and from two hundred, with
// owners who sign in meanwhile. The guessers' clock is given, so that hours of guessing take seconds.
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { signInByPassword } from "@/app/_people/sign-in";
import { closeDatabase } from "@/db/close-database";
import { countTry, forgetTries, type TryVerdict } from "@/db/writes/people/sign-in-tries";
import { mostInARow, mostTries, windowMs } from "@/lib/people/sign-in-delay";
import { minimalStandard } from "../../minimal-standard";
import { asDatabaseOwner } from "../../own-database";
import { somebody, testPassword } from "./signed-in";
import { browser, openBrowser } from "./stand-in-browser";

vi.mock("next/headers", async () => (await import("./stand-in-browser")).nextHeaders);

beforeAll(async () => {
  await asDatabaseOwner("truncate people, sign_in_tries cascade");
  openBrowser({ "ohmsworth-peer": "10.9.0.1" });
});
afterAll(closeDatabase);

interface Answered {
  readonly email: string;
  readonly address: string;
  readonly at: number;
  readonly verdict: TryVerdict;
}

/** Guesses of which none waits for another; a stranger's browser is not known. */
async function guessAtOnce(guesses: readonly Omit<Answered, "verdict">[]): Promise<readonly Answered[]> {
  return await Promise.all(
    guesses.map(async (guess) => ({ ...guess, verdict: await countTry({ ...guess, device: undefined }, guess.at) })),
  );
}

/** Twenty seconds apart on average, in bursts, and every ninety a quiet quarter of an hour, after which waits begin anew. */
function moments(count: number, next: () => number): readonly number[] {
  let at = Date.now();
  return Array.from({ length: count }, (_, n) => {
    at += n % 90 === 89 ? windowMs : Math.floor(next() ** 2 * 60_000);
    return at;
  });
}

const letThrough = (answers: readonly Answered[]) => answers.filter(({ verdict }) => verdict.kind === "go on");

function byAccountAndPlace(answers: readonly Answered[]): readonly (readonly Answered[])[] {
  const found = new Map<string, Answered[]>();
  for (const answer of answers) {
    const key = `${answer.email}\n${answer.address}`;
    const others = found.get(key);
    if (others === undefined) found.set(key, [answer]);
    else others.push(answer);
  }
  return [...found.values()];
}

/** The most that were let through to one account from one place within any quarter of an hour. */
function mostInAnyWindow(answers: readonly Answered[]): number {
  const counts = byAccountAndPlace(letThrough(answers)).flatMap((tries) =>
    tries.map(({ at: from }) => tries.filter(({ at }) => at >= from && at < from + windowMs).length),
  );
  return Math.max(...counts);
}

/** Waits after a try that was let through, as they were told, in order; each stretch begins after a quiet quarter of an hour. */
function stretchesOfWaits(answers: readonly Answered[]): readonly (readonly number[])[] {
  return byAccountAndPlace(answers).flatMap((tries) => {
    const stretches: number[][] = [[]];
    let last = Number.NEGATIVE_INFINITY;
    const isWaiting = ({ verdict }: Answered) => Number(verdict.kind === "wait"); // of one moment after the try let through
    for (const { at, verdict } of tries.toSorted((a, b) => a.at - b.at || isWaiting(a) - isWaiting(b))) {
      if (verdict.kind === "wait") stretches.at(-1)?.push(at + verdict.ms - last);
      if (verdict.kind !== "go on") continue;
      if (at - last >= windowMs) stretches.push([]);
      last = at;
    }
    return stretches;
  });
}

const grow = (waits: readonly number[]) => waits.every((wait, n) => wait >= (waits[n - 1] ?? 0));

/** What was told, and not about whom. */
const told = (answers: readonly Answered[]) =>
  answers.map(({ at, address, verdict }) => `${at} ${address} ${JSON.stringify(verdict)}`).sort();

describe.each([1, 200])("guesses from %i places", (places) => {
  const placeAt = (chance: number) => `10.${places}.0.${Math.floor(chance * places)}`;

  test("a thousand on one account are slowed down and a hundred in a row, and its owner gets in meanwhile", async () => {
    const { email } = await somebody("owner");
    const signIn = () => signInByPassword({ email, password: testPassword });
    browser.jar.clear();
    expect(await signIn()).toEqual({ kind: "signed in" });
    const ownDevice = [...browser.jar];

    const next = minimalStandard(8 + places);
    const rounds = moments(250, next).map(
      (at) => Array.from({ length: 4 }, () => ({ at, address: placeAt(next()) })), // four at once
    );
    const guess = async (whose: string, some: typeof rounds) => {
      const answers: Answered[] = [];
      for (const round of some) answers.push(...(await guessAtOnce(round.map((each) => ({ ...each, email: whose })))));
      return answers;
    };
    const halves = [];
    for (const half of [rounds.slice(0, 125), rounds.slice(125)]) {
      halves.push(await guess(email, half));
      browser.jar.clear();
      if (places > 1) expect(await signIn()).toEqual({ kind: "only from a known device" });
      for (const [name, value] of ownDevice) browser.jar.set(name, value);
      expect(await signIn()).toEqual({ kind: "signed in" });
    }
    const all = halves.flat();
    expect(all).toHaveLength(1000);
    if (places === 1) expect(mostInAnyWindow(all)).toBe(mostTries);
    else for (const half of halves) expect(letThrough(half)).toHaveLength(mostInARow);
    expect(letThrough(all).length).toBeLessThanOrEqual(2 * mostInARow);
    expect(stretchesOfWaits(all).filter((waits) => !grow(waits))).toEqual([]);
    const longest = Math.max(0, ...stretchesOfWaits(all).flat());
    expect(longest).toBe(places === 1 ? windowMs : 0);

    const stranger = await guess(`stranger-${places}@nowhere.example`, rounds.slice(0, 125));
    expect(told(stranger)).toEqual(told(halves[0] ?? []));
  });

  test("ten thousand over five hundred accounts find of each no more than ten a quarter of an hour, known or not", async () => {
    const known = (await Promise.all(Array.from({ length: 250 }, () => somebody("reader")))).map(({ email }) => email);
    const unknown = known.map((_, n) => `nobody-${places}-${n}@nowhere.example`);
    const next = minimalStandard(5 + places);
    const answers: Answered[] = [];
    for (const [round, at] of moments(20, next).entries()) {
      const addresses = known.map(() => placeAt(next()));
      for (const emails of [known, unknown])
        answers.push(...(await guessAtOnce(emails.map((email, n) => ({ email, at, address: addresses[n] ?? "" })))));
      const owner = { email: known[round] ?? "", address: "10.9.0.1", device: "own" };
      expect((await countTry(owner, at)).kind).toBe("go on");
      await forgetTries(owner, at);
    }
    expect(answers).toHaveLength(10_000);
    expect(mostInAnyWindow(answers)).toBeLessThanOrEqual(mostTries);
    expect(stretchesOfWaits(answers).filter((waits) => !grow(waits))).toEqual([]);
    // Twenty each: from one place ten are held back; from two hundred they are no more than an account's owner may err.
    expect(letThrough(answers)).toHaveLength(500 * (places === 1 ? mostTries : 20));
    const isKnown = new Set(known);
    const [toKnown, toUnknown] = [true, false].map((is) =>
      told(answers.filter(({ email }) => isKnown.has(email) === is)),
    );
    expect(toKnown).toEqual(toUnknown);
  });
});
