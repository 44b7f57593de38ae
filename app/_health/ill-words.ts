import type { Readiness } from "./load-readiness";

export const noAnswer = "The site does not answer. What you send now does not arrive; what you typed stands.";

/** What the site lacks to do its work, as whoever uses it is told; nothing where it lacks nothing. */
export function illWords({ database, schema, disk }: Readiness): readonly string[] {
  if (!database) return ["The database does not answer. What is stored stands as it was; what you send now may fail."];
  return [
    ...(schema ? [] : ["The database is not of this version of the program, so pages may fail until it is."]),
    ...(disk ? [] : ["There is hardly any room left on the disk: files and photos may not be taken."]),
  ];
}
