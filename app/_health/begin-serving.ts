import process from "node:process";
import { guardContent } from "@/app/_http/content-policy";
import { tellFailures } from "@/app/_http/tell-failures";
import { limitCostly } from "@/app/_limits/limit-costly";
import { readSettings } from "@/app/_settings/settings";
import { goOnJudging } from "./go-on-judging";
import { startNightly } from "./start-nightly";
import { distrustForwarding } from "./trust-proxy";
import { watchRequests } from "./watch-requests";

/** What a server does besides answering: it watches itself, takes up judging that broke off, and looks over what it keeps every night. */
export function beginServing(): void {
  const settings = readSettings(process.env);
  if (settings.OHMSWORTH_PROXY === "none") distrustForwarding();
  tellFailures();
  watchRequests(settings.OHMSWORTH_LOG ?? (process.stdout.isTTY ? "failures" : "requests"));
  guardContent({ development: process.env.NODE_ENV === "development" });
  limitCostly();
  goOnJudging();
  if (settings.OHMSWORTH_NIGHTLY === "on") startNightly();
}
