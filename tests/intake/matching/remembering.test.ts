import { expect, test } from "vitest";
import { remembering } from "@/lib/intake/matching/remembering";

function counted() {
  const asked: string[] = [];
  const read = remembering((text) => {
    asked.push(text);
    return { text };
  });
  return { asked, read };
}

test("what repeats is read once", () => {
  const { asked, read } = counted();
  expect(read("a")).toBe(read("a"));
  expect(read("b")).toEqual({ text: "b" });
  expect(asked).toEqual(["a", "b"]);
});

test("after 20,000 texts it begins anew, and long ones are never kept", () => {
  const { asked, read } = counted();
  for (let index = 0; index < 20_000; index++) read(`${index}`);
  read("0");
  expect(asked.length).toBe(20_000);
  read("one more");
  expect(read("0")).toEqual({ text: "0" });
  expect(asked.length).toBe(20_002);
  const long = "x".repeat(101);
  expect(read(long)).not.toBe(read(long));
});
