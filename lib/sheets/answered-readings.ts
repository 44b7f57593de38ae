import type { OwnCheck } from "@/lib/domain/own-check";
import type { Reading } from "@/lib/domain/reading";
import type { SheetAnswer } from "./sheet-answer";

/** The answers as readings of the job, numbered in the order in which they were given; steps passed over give none. */
export function answeredReadings(
  answers: readonly SheetAnswer[],
  {
    technician,
    after = 0,
    own = noOwn,
  }: {
    readonly technician: string | undefined;
    readonly after?: number;
    /** The company's own checks that the sheets of the job have. */
    readonly own?: ReadonlyMap<string, OwnCheck>;
  },
): readonly Reading[] {
  const given = [...answers]
    .sort((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1))
    .filter(({ given }) => given.kind === "reading");
  return given.flatMap(({ check, given, note, at }, index): Reading[] => {
    if (given.kind !== "reading") return [];
    const { kind: _, cautionsRead: __, ...taken } = given;
    return [
      {
        ...taken,
        number: after + index + 1,
        check,
        own: own.get(check),
        note: note.trim() === "" ? undefined : note,
        technician,
        takenAt: at,
      },
    ];
  });
}

const noOwn: ReadonlyMap<string, OwnCheck> = new Map();
