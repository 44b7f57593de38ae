import { jobStatuses } from "@/lib/domain/job";
import type { Cells } from "./row-problems";

/** What a row of jobs says of itself where the job came to nothing and has no day of completion; undefined otherwise. */
export function neverCompleted({ status = "", completed_on: completed = "" }: Cells): string | undefined {
  const word = status.trim();
  if (completed.trim() !== "" || word === "closed" || !jobStatuses.some((each) => each === word)) return undefined;
  return word;
}

/** Why such a row is left out where its job is not on file. */
export function neverCompletedReason(status: string): string {
  return `${status.charAt(0).toUpperCase()}${status.slice(1)} and never completed: it counts as nothing.`;
}
