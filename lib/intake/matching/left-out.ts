import { neverCompleted, neverCompletedReason } from "../never-completed";
import type { OpenRow } from "./open-row";

/** In words of a status, for jobs that are still open; no status of ours, since only closed jobs come in. */
export const notClosed = "not_closed";

/** Why a row of jobs is left out although it is a record; undefined where it is not. */
export function leftOut(open: OpenRow): string | undefined {
  const { own, problems } = open;
  if (own.status === notClosed) return "Not closed yet: the job comes in with a file in which it is closed.";
  const status = neverCompleted(own);
  if (status === undefined || problems.length === 0) return undefined; // without problems it may change a job on file
  const completed = open.origin("completed_on")?.source;
  return problems.some(({ column }) => column === completed) ? undefined : neverCompletedReason(status);
}
