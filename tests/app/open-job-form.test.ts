import { expect, test } from "vitest";
import { openJobForm } from "@/app/sheet/open/open-job-form";
import { identifier } from "@/lib/intake/cell-texts";

const typed = {
  jobNumber: "J-1",
  serial: "FW-77",
  symptom: "will_not_drain",
  complaint: "It hums.",
  requestedOn: "2026-10-30",
  technician: "",
  payer: "maker",
  callbackOf: "",
};

function problemsOf(more: Partial<typeof typed>): Readonly<Record<string, string>> {
  const { error } = openJobForm.safeParse({ ...typed, ...more });
  return Object.fromEntries((error?.issues ?? []).map(({ path, message }) => [String(path[0]), message]));
}

test("what is typed is read, blanks and line ends around it taken off", () => {
  expect(openJobForm.parse({ ...typed, serial: " FW-77\t", technician: " Kit " })).toEqual({
    ...typed,
    technician: "Kit",
    callbackOf: undefined,
  });
});

test.each(["jobNumber", "serial", "callbackOf"] as const)(
  "%s may be whatever a file may hold, and nothing else",
  (field) => {
    for (const value of ["X".repeat(200), "Ünit 7/3", "X".repeat(201), "—", "8.12E+11"]) {
      const read = identifier.read(value);
      expect(problemsOf({ [field]: value }), value).toEqual(
        "value" in read ? {} : { [field]: `It ${read.problem}. ${read.fix}` },
      );
    }
  },
);

test("a blank number or serial is asked for, a blank earlier job is none", () => {
  expect(problemsOf({ jobNumber: " ", serial: "" })).toEqual({
    jobNumber: "Give the job a number.",
    serial: "Type the serial from the rating plate.",
  });
});
