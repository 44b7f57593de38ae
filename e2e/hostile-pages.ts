import { hostile, hostileAndShort } from "./hostile-words";

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
export function pagesToOpen({ signal, claim, order }: Made): readonly string[] {
  const job = encodeURIComponent(hostile["job number"]);
  const part = `/parts/${keyOfPart(hostile["newer part"])}`;
  const find = (words: string) => encodeURIComponent(words);
  return [
    "/today",
    `/jobs?words=${find(hostile.complaint)}`,
    `/jobs/${job}/history`,
    `/units?words=${find(hostile.serial)}`,
    "/symptoms",
    "/symptoms/will_not_drain?type=front_load_washer",
    `/repeats?by=maker,model&make=${find(hostile.maker)}`,
    "/repeats/planted_gland",
    "/repeats/drain_pump?rows=model",
    "/repeats/drain_pump/before-after?on=2026-05-01",
    `/repeats/drain_pump/compare?with=maker:${find(hostile.maker)}`,
    "/repeats/visits?by=technician",
    signal,
    "/claims?list=answered",
    `/claims/${claim}/packet`,
    `/claims/${claim}/sent/1`,
    "/claims/answers",
    "/claims/payers",
    "/claims/unclaimed",
    `/parts?q=${find("newer part")}`,
    `${part}/last-buy`,
    "/parts/idle",
    "/parts/money",
    order,
    "/parts/trucks",
    "/files",
    "/files/columns",
    "/files/new",
    "/files/sending",
    "/sheet",
    "/shop",
    "/shop/coverage",
    "/shop/coverage/policy/planted_household/1",
    "/shop/health",
    "/shop/how-we-count",
    "/shop/people",
    "/shop/reporting-delay",
    "/shop/sheets",
    "/account",
    "/account/second-factor",
    ...["/jobs", "/repeats", "/repeats/visits", "/claims", "/parts"].map(withEveryFilter),
  ];
}

/** As addresses of parts have it. */
export function keyOfPart(partNumber: string): string {
  return partNumber.toUpperCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
}
