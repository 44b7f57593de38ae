// Can everybody read the page: by axe's rules in both themes, wide and on a phone, with no scrolling sideways.
import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

export const wide = { width: 1280, height: 800 };
const narrow = { width: 390, height: 844 };

/** At both widths. The page is wide again afterwards, and in the theme that it came in. */
export async function isReadableAtEveryWidth(page: Page): Promise<void> {
  const at = page.url();
  await page.setViewportSize(wide);
  await isReadable(page);
  expect(await sidewaysScroll(page), `${at}, wide`).toBe(0);
  await page.setViewportSize(narrow);
  // On a phone tables lose columns and gain nothing; what else the page shows there is looked at again.
  expect(await findings(axe(page).exclude("main table")), `${at}, narrow`).toEqual([]);
  expect(await sidewaysScroll(page), `${at}, narrow`).toBe(0);
  await page.setViewportSize(wide);
}

/** As it stands, in both themes: dark differs in its colours alone, and those hang on one attribute. */
export async function isReadable(page: Page): Promise<void> {
  const root = page.locator("html");
  const theme = await root.getAttribute("data-theme");
  await root.evaluate((html) => html.setAttribute("data-theme", "light"));
  expect(await findings(axe(page)), `${page.url()}, light`).toEqual([]);
  await root.evaluate((html) => html.setAttribute("data-theme", "dark"));
  expect(await findings(axe(page).withRules("color-contrast")), `${page.url()}, dark`).toEqual([]);
  await root.evaluate((html, was) => html.setAttribute("data-theme", was ?? "auto"), theme);
}

const axe = (page: Page) => new AxeBuilder({ page }).options({ resultTypes: ["violations"] });

/**
 * Options are drawn by the system, and there can be a thousand of them. No page has frames of other sites, so all is looked at
 * where it stands and no second page is opened to gather it (axe calls that "legacy"); nothing is gathered of what passes.
 */
async function findings(look: AxeBuilder): Promise<readonly string[]> {
  const { violations } = await look.exclude("option").setLegacyMode().analyze();
  return violations.map(({ id, nodes }) => {
    const where = nodes.slice(0, 3).map(({ html }) => html.slice(0, 160));
    return `${id}: ${where.join(" | ")}`;
  });
}

/** Pixels by which the page itself can be moved sideways; tables move inside their own frames. */
async function sidewaysScroll(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}
