import { describe, expect, test } from "vitest";
import { jobRecordsSchema } from "@/lib/intake/records/job-records-schema";
import { readJobRecords } from "@/lib/intake/records/read-job-records";

const job = {
  job_number: "J-1",
  maker: "Brackenhall",
  model: "BHF27-W3",
  completed_on: "2026-04-15",
  cause: "component",
};

function problemsOf(document: unknown) {
  const read = readJobRecords(document);
  return read.ok ? [] : read.problems.map(({ pointer, problem }) => `${pointer} ${problem}`);
}

test("a job with its lists becomes rows of three kinds, each with its place", () => {
  const read = readJobRecords({
    jobs: [
      {
        ...job,
        visits: 2,
        part_lines: [{ part_number: "BH-077", quantity: 1, unit_cost: 41.5 }],
        readings: [{ number: 4, isolated: true, note: null }],
      },
    ],
  });
  expect(read).toEqual({
    ok: true,
    records: [
      { kind: "jobs", pointer: "/jobs/0", cells: { ...job, visits: "2" } },
      {
        kind: "part-lines",
        pointer: "/jobs/0/part_lines/0",
        cells: { line: "1", part_number: "BH-077", quantity: "1", unit_cost: "41.5", job_number: "J-1" },
      },
      {
        kind: "readings",
        pointer: "/jobs/0/readings/0",
        cells: { number: "4", isolated: "yes", note: "", job_number: "J-1" },
      },
    ],
  });
});

describe("what is no row is named by its JSON Pointer", () => {
  test.each([
    ["a number", 5, [" is no list of jobs"]],
    ["no list", { jobs: {} }, ["/jobs is no list of jobs"]],
    ["an empty list", { jobs: [] }, ["/jobs holds no job"]],
    ["a name beside the list", { jobs: [job], more: 1 }, ["/more is not one of our names"]],
    ["a text among jobs", { jobs: [job, "J-2"] }, ["/jobs/1 is no job"]],
    [
      "a name with a slash and a tilde",
      { jobs: [{ ...job, "a/b~c": 1 }] },
      ["/jobs/0/a~1b~0c is not one of our names"],
    ],
    ["part lines that are no list", { jobs: [{ ...job, part_lines: {} }] }, ["/jobs/0/part_lines is no list"]],
    ["a part line that is no row", { jobs: [{ ...job, part_lines: [[]] }] }, ["/jobs/0/part_lines/0 is no row"]],
    [
      "another job's part line",
      { jobs: [{ ...job, part_lines: [{ job_number: "J-2" }] }] },
      ["/jobs/0/part_lines/0/job_number is not the number of its job, J-1"],
    ],
    ["an object in a cell", { jobs: [{ ...job, serial: {} }] }, ["/jobs/0/serial is a list or an object"]],
  ])("%s", (_, document, expected) => {
    expect(problemsOf(document)).toEqual(expected);
  });

  test("a serial number that lost digits as a JSON number, while the longest safe one passes", () => {
    expect(problemsOf(JSON.parse('{"jobs":[{"job_number":"J-1","serial":9007199254740993}]}'))).toEqual([
      "/jobs/0/serial has more digits than a JSON number keeps",
    ]);
    expect(problemsOf({ jobs: [{ ...job, serial: 9007199254740991 }] })).toEqual([]);
  });
});

test("the published schema names every column that is read, and asks for no number that follows from the place", () => {
  const schema = jobRecordsSchema(500) as {
    properties: { jobs: { maxItems: number; items: { properties: Record<string, unknown>; required: string[] } } };
  };
  const { items, maxItems } = schema.properties.jobs;
  expect(maxItems).toBe(500);
  expect(items.required).toEqual(expect.arrayContaining(["job_number", "completed_on"]));
  const lines = items.properties.part_lines as { items: { required: string[]; properties: Record<string, unknown> } };
  expect(lines.items.required).toContain("part_number");
  expect(lines.items.required).not.toContain("line");
  expect(lines.items.required).not.toContain("job_number");
  const everything = Object.fromEntries(
    Object.keys(items.properties).map((name) => [name, name === "part_lines" || name === "readings" ? [] : "x"]),
  );
  expect(problemsOf({ jobs: [everything] })).toEqual([]);
});
