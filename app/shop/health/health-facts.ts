import type { SignalsView } from "@/app/_health/four-signals";
import type { Health } from "@/app/_health/load-health";
import { leastFreeBytes } from "@/app/_health/load-readiness";
import type { Definition } from "@/app/_ui/definition-list";
import { formatBytes } from "@/lib/format/format-bytes";
import { formatCounted } from "@/lib/format/format-count";

/** What the site stands on: database, schema, disk. */
export function groundFacts({ readiness, stored, disks }: Health): readonly Definition[] {
  return [
    {
      term: "Database",
      detail: stored === undefined ? "does not answer" : `PostgreSQL ${stored.server.version} answers`,
      source:
        stored === undefined
          ? "Nothing is lost: what was stored is on its disk. Pages come back when it does."
          : `${formatBytes(stored.server.bytes)} stored; ${stored.server.connections} of ${stored.server.mostConnections} connections in use.`,
    },
    ...(stored === undefined ? [] : [login(stored.tooManyRights)]),
    {
      term: "Schema",
      detail: readiness.schema ? "this program’s" : readiness.database ? "older than this program" : "unknown",
      source:
        readiness.database && !readiness.schema
          ? "Start the program again: it brings the schema up at its start."
          : undefined,
    },
    {
      term: "Disk of the site",
      detail: `${formatBytes(disks.siteBytes)} free`,
      source: roomText(disks.siteBytes),
    },
    disks.databaseBytes === undefined
      ? {
          term: "Disk of the database",
          detail: "not known here",
          source:
            "The database runs on another computer, or does not say where it keeps its files: watch its disk there.",
        }
      : {
          term: "Disk of the database",
          detail: `${formatBytes(disks.databaseBytes)} free`,
          source: roomText(disks.databaseBytes),
        },
  ];
}

function login(tooManyRights: readonly string[]): Definition {
  if (tooManyRights.length === 0) {
    return {
      term: "Login to the database",
      detail: "the site’s own",
      source: "It reads and changes rows. It can alter no table, and not touch the change log.",
    };
  }
  return {
    term: "Login to the database",
    detail: "may do more than it must",
    source: `It ${tooManyRights.join("; ")}. Let DATABASE_URL name a role that may make others (CREATEROLE) and owns the tables, and start again.`,
  };
}

function roomText(bytes: number): string {
  return bytes > leastFreeBytes
    ? `Under ${formatBytes(leastFreeBytes)} there may be no room for a load or a photo, and /readyz says so.`
    : "A load or a photo may find no room. Free some before adding more.";
}

/** Traffic, errors, time to answer, and how full the program is. */
export function signalFacts({ signals, process }: Health): readonly Definition[] {
  return [
    ...(signals === undefined ? [{ term: "Requests", detail: "none counted yet" }] : answered(signals)),
    {
      term: "Program",
      detail: `${formatBytes(process.residentBytes)} of memory`,
      source: `99 in 100 turns of its thread waited at most ${Math.ceil(process.slowestTurnMs)} ms since it started.`,
    },
  ];
}

function answered({ requests, errors, medianMs, slowMs }: SignalsView): readonly Definition[] {
  return [
    { term: "Requests", detail: formatCounted(requests, "request"), source: "Pages, files and their parts." },
    {
      term: "Failures",
      detail: errors === 0 ? "none" : formatCounted(errors, "answer"),
      source: "Answers that were the program’s own failure (status 500 and above). Each is a line in its log.",
    },
    {
      term: "Time to answer",
      detail: `half within ${within(medianMs)}, 95 in 100 within ${within(slowMs)}`,
      source: "Counted in classes, so it is the upper end of one.",
    },
  ];
}

function within(ms: number): string {
  if (!Number.isFinite(ms)) return "more than 12.8 s";
  return ms < 1000 ? `${ms} ms` : `${ms / 1000} s`;
}
