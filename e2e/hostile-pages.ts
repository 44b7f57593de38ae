import { hostile, hostileAndShort } from "./hostile-words";
import type { PageKind } from "./watch-for-harm";

/** What was made on the way, by which pages are found. */
export interface Made {
  readonly signal: string;
  readonly claim: string;
  readonly order: string;
  /** Where the file stands of what new terms would change. */
  readonly changes: string;
  /** Text of the report of rows with problems, which is gone when the others are added. */
  readonly report: string;
}

const every = ["words", "q", "make", "model", "type", "component", "symptom", "cause", "tech", "technician", "payer"];
const rest = ["from", "to", "age", "count", "by", "and", "level", "order", "as", "on", "with", "rows", "list", "show"];
const more = ["sort", "within", "page", "class", "budget", "days", "came", "done", "said", "kept", "season", "problem"];

/** The page with a hostile word for each filter that any page has, and one that none has. */
export function withEveryFilter(path: string): string {
  const words = new URLSearchParams(
    [...every, ...rest, ...more, hostileAndShort].map((name) => [name, hostileAndShort]),
  );
  return `${path}?${words}`;
}

/** Pages on which nobody came by while the words were written. */
export function pagesToOpen({ claim, order }: Made): readonly string[] {
  const find = (words: string) => encodeURIComponent(words);
  return [
    "/today",
    `/jobs?words=${find(hostile.complaint)}`,
    `/jobs/${find(hostile["job number"])}/history`,
    `/units?words=${find(hostile.serial)}`,
    "/symptoms/will_not_drain?type=front_load_washer",
    `/repeats?by=maker,model&make=${find(hostile.maker)}`,
    "/repeats/planted_gland",
    "/repeats/drain_pump?rows=model",
    "/repeats/drain_pump/before-after?on=2026-05-01",
    `/repeats/drain_pump/compare?with=maker:${find(hostile.maker)}`,
    "/repeats/visits?by=technician",
    "/claims?list=answered",
    `/claims/${claim}/packet`,
    `/claims/${claim}/sent/1`,
    "/claims/answers",
    "/claims/payers",
    "/claims/unclaimed",
    `/parts?q=${find("newer part")}`,
    `/parts/${keyOfPart(hostile["newer part"])}/last-buy`,
    "/parts/money",
    order,
    "/parts/trucks",
    "/files",
    "/sheet",
    "/shop/coverage",
    "/shop/how-we-count",
    ...["/jobs", "/repeats", "/claims"].map(withEveryFilter),
  ];
}

/** Pages that show nobody's words; where one begins to, it is opened like the others. */
export const pagesWithoutWords: readonly PageKind[] = [
  "/account",
  "/account/second-factor",
  "/files/columns",
  "/files/new",
  "/files/sending",
  "/parts/idle",
  "/shop",
  "/shop/health",
  "/shop/reporting-delay",
  "/shop/sheets",
  "/symptoms",
];

/** As addresses of parts have it. */
export function keyOfPart(partNumber: string): string {
  return partNumber.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
}
