import type { TakeBackResult, TakenRows } from "@/db/writes/take-back";

/** What taking a load back did, in lines for a terminal. */
export function describeTakeBack(batchId: number, result: TakeBackResult): string {
  switch (result.kind) {
    case "no such load":
      return `There is no load ${batchId}.`;
    case "taken back before":
      return `Load ${batchId} was taken back before. Nothing was changed.`;
    case "taken back":
      return [
        `Load ${batchId} is taken back.`,
        ...list("Removed", result.removed),
        ...list("Returned to what it was before", result.returned),
        ...list("Left as it is", result.staying),
      ].join("\n");
  }
}

function list(title: string, groups: readonly TakenRows[]): readonly string[] {
  return groups.map(({ noun, rows, reason, examples }) => {
    const named = examples.slice(0, 3).join("; ");
    return `  ${title}: ${rows} × ${noun}${reason === "" ? "" : `, because ${reason}`} (${named}${rows > 3 ? "; …" : ""})`;
  });
}
