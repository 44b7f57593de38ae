import type { IncomingMessage } from "node:http";
import { addressPattern } from "@/app/_http/address-pattern";
import type { pageActs, routeActs } from "@/app/_people/route-acts";

/** Pages that read or reckon over the whole company. */
export const costlyPages = [
  "/today",
  "/jobs",
  "/units",
  "/symptoms",
  "/symptoms/[symptom]",
  "/repeats",
  "/repeats/[component]",
  "/repeats/[component]/before-after",
  "/repeats/[component]/compare",
  "/repeats/signals/[key]",
  "/repeats/visits",
  "/claims",
  "/claims/[claim]/packet",
  "/claims/failed-parts",
  "/claims/unclaimed",
  "/parts",
  "/parts/[part]",
  "/parts/[part]/last-buy",
  "/parts/idle",
  "/parts/money",
  "/parts/trucks",
  "/shop/coverage/draft/[id]/review",
  "/shop/how-we-count",
  "/shop/reporting-delay",
] as const satisfies readonly (keyof typeof pageActs)[];

/** Whole tables and packets as files. */
export const costlyFiles = [
  "GET /claims/[claim]/packet.pdf",
  "GET /claims/unclaimed/unclaimed.csv",
  "GET /files/draft/[id]/report.csv",
  "GET /jobs/jobs.csv",
  "GET /parts/[part]/months.csv",
  "GET /parts/money/money.csv",
  "GET /parts/orders/orders.csv",
  "GET /parts/parts.csv",
  "GET /repeats/[component]/[file]",
  "GET /repeats/[component]/before-after/[file]",
  "GET /repeats/[component]/compare/[file]",
  "GET /repeats/rates.csv",
  "GET /repeats/signals/[key]/[file]",
  "GET /repeats/signals/signals.csv",
  "GET /repeats/visits/visits.csv",
  "GET /shop/coverage/draft/[id]/review/changes.csv",
] as const satisfies readonly (keyof typeof routeActs)[];

/** Files that take as long as a person waits for no page, so that they stand in a line of their own. */
export const longFiles = ["GET /claims/packets.zip"] as const satisfies readonly (keyof typeof routeActs)[];

const fileOf = (key: string) => addressPattern(key.replace("GET ", ""));
const views = [...costlyPages.map(addressPattern), ...costlyFiles.map(fileOf)];
const long = longFiles.map(fileOf);

/** Which of a person's two lines. */
export type Costly = "view" | "long";

/**
 * Whether an answer costs much; undefined where not. What changes something is never turned away here: what was typed would
 * be lost. Of a page that a browser fetches ahead of a click the framework makes no more than its outline.
 */
export function costlyKind({
  method,
  url = "/",
  headers,
}: Pick<IncomingMessage, "method" | "url" | "headers">): Costly | undefined {
  if (method !== "GET" && method !== "HEAD") return undefined;
  if (headers.rsc === "1" && headers["next-router-prefetch"] === "1") return undefined;
  const path = url.split(/[?#]/, 1)[0] ?? "/";
  if (path.startsWith("/_next/")) return undefined;
  if (long.some((file) => file.test(path))) return "long";
  return views.some((view) => view.test(path)) ? "view" : undefined;
}
