// The check sheet as a thumb uses it.
import { expect, type Locator, type Page } from "@playwright/test";
import type { Touches } from "./keystroke-model";
import type { NumberTold, Told } from "./no-drain-walks";

/** What touches and types. */
export interface Hand {
  readonly tap: (of: Locator) => Promise<void>;
  readonly type: (of: Locator, text: string) => Promise<void>;
}

const plainHand: Hand = { tap: (of) => of.click(), type: (of, text) => of.fill(text) };

let opened = 0;

/** Opens a job at the desk and lands on its sheet. @returns its number */
export async function openJobFor(page: Page, serial: string, symptom: string): Promise<string> {
  const job = `S-${Date.now() % 1_000_000}-${++opened}`;
  await page.goto("/sheet/open");
  await page.getByLabel("Job number").fill(job);
  await page.getByLabel("Serial").fill(serial);
  await page.getByLabel("What the customer notices").selectOption(symptom);
  await page.getByLabel("Complaint in the customer’s words").fill("It stopped on Monday, says Mrs. Canary.");
  await page.getByRole("button", { name: "Open the job" }).click();
  await page.waitForURL(/\/sheet\/job\//, { timeout: 120_000 });
  await expect(page.locator("#sheet-flow")).toBeVisible({ timeout: 120_000 });
  return job;
}

/** Name of the step on the screen; undefined where the finding is shown. */
export async function stepName(page: Page): Promise<string | undefined> {
  const flow = page.locator("#sheet-flow");
  await expect(flow).toBeVisible();
  const heading = (await flow.getByRole("heading", { level: 2 }).first().textContent()) ?? "";
  const isStep = (await flow.getByRole("button", { name: "Skip" }).count()) > 0;
  return isStep ? heading.replace(/ — \d of \d$/, "") : undefined;
}

/** Says to the step what is told, live cautions read, whatever is asked back kept. */
export async function answerStep(
  page: Page,
  told: Told,
  hand: Hand = plainHand,
  { mayFail = false }: { readonly mayFail?: boolean } = {},
) {
  const { tap } = hand;
  const flow = page.locator("#sheet-flow");
  const before = await flow.locator("ol > li").count();
  const cautions = flow.getByRole("button", { name: /I have read the cautions/ });
  if ((await cautions.count()) > 0) await tap(cautions);
  if ("skip" in told) {
    await tap(flow.getByRole("button", { name: "Skip" }));
    await tap(flow.getByRole("button", { name: told.skip, exact: true }));
  } else if ("none" in told) await tap(flow.getByRole("button", { name: "None stored" }));
  else if ("word" in told) await tap(flow.getByRole("button", { name: new RegExp(`^${told.word}`) }));
  else if ("state" in told) await tap(flow.getByRole("button", { name: told.state }));
  else if ("code" in told) {
    await hand.type(flow.getByLabel("Code as shown"), told.code);
    await tap(flow.getByRole("button", { name: "Next" }));
  } else await typeNumber(flow, told, hand);
  const keep = flow.getByRole("button", { name: /^(Keep it|No, keep)/ });
  if (mayFail) {
    const said = flow.getByRole("alert");
    await expect
      .poll(async () => (await said.count()) + (await flow.locator("ol > li").count()))
      .toBeGreaterThan(before);
    return;
  }
  await expect.poll(async () => (await keep.count()) + (await flow.locator("ol > li").count())).toBeGreaterThan(before);
  if ((await keep.count()) > 0) await tap(keep);
  await expect.poll(() => flow.locator("ol > li").count()).toBeGreaterThan(before);
}

async function typeNumber(flow: Locator, told: NumberTold, { tap, type }: Hand) {
  if (told.part !== undefined) await tap(flow.getByRole("group", { name: /Which part/ }).getByLabel(told.part));
  await type(flow.getByLabel("Reading", { exact: true }), told.number);
  const asks = [
    [/Was the step commanded/, told.commanded],
    [/Was the load connected/, told.load],
  ] as const;
  if (told.stillConnected) {
    await tap(flow.locator("summary").filter({ hasText: "Recorded as" }));
    await tap(flow.getByRole("group", { name: /Was the part disconnected/ }).getByLabel("No"));
  }
  for (const [legend, value] of asks)
    if (value !== undefined) await tap(flow.getByRole("group", { name: legend }).getByLabel(value ? "Yes" : "No"));
  await tap(flow.getByRole("button", { name: "Next" }));
}

/** Counts what a thumb does. Typing is no tap, and neither is touching the field for it; both are counted apart. */
export function countingThumb(): Hand & {
  readonly count: (more: Partial<Touches>) => void;
  readonly touches: () => Touches;
} {
  let touched: Touches = { taps: 0, fields: 0, keys: 0, photos: 0, words: 0 };
  const count = (more: Partial<Touches>) => {
    for (const [kind, number] of Object.entries(more))
      touched = { ...touched, [kind]: touched[kind as keyof Touches] + number }; // Object.entries loses the key type
  };
  return {
    count,
    touches: () => touched,
    tap: async (of) => {
      count({ taps: 1 });
      await of.click();
    },
    type: async (of, text) => {
      count({ fields: 1, keys: text.length });
      await of.fill(text);
    },
  };
}
