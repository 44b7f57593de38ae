import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
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

test("what is remembered does not hold the piece of the file that it was cut from", () => {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  const { read } = counted();
  collect();
  const before = process.memoryUsage().heapUsed;
  for (let piece = 0; piece < 200; piece++) {
    const text = Buffer.alloc(1 << 18, `a cell of piece ${piece},`).toString("latin1");
    read(text.slice(0, 18));
  }
  collect();
  expect(process.memoryUsage().heapUsed - before).toBeLessThan(25 * 2 ** 18);
});
