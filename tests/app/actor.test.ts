import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { expect, test } from "vitest";
import { asActor, currentActor } from "@/db/actor";

test("two people at once each work under their own name, and nobody else under either", async () => {
  const work = async () => {
    const seen = [currentActor()];
    await pause(5);
    return [...seen, await asActor("the program", async () => pause(1).then(currentActor)), currentActor()];
  };
  const [kim, lee] = await Promise.all([asActor("Kim", work), asActor("Lee", work)]);
  expect(kim).toEqual(["Kim", "the program", "Kim"]);
  expect(lee).toEqual(["Lee", "the program", "Lee"]);
  expect(currentActor()).toBe("");
});

/** Files of the app in which somebody's name is taken for who is at work, and the line before which it must have been shown. */
const namers: Readonly<Record<string, RegExp>> = {
  "_people/may-do.ts": /signedIn\(\)[\s\S]+person === undefined[\s\S]+actAs\(person\.name\)/,
  "_people/may-call.ts": /loadSignedIn\(request\.headers\)[\s\S]+person === undefined[\s\S]+actAs\(person\.name\)/,
  "api/jobs/route.ts": /recogniseApiKey\(bearer\)[\s\S]+sender === undefined[\s\S]+actAs\(sender\.name\)/,
  "commands/work-on-file.ts": /process\.once\("message"[\s\S]+asActor\(by/,
};

test("nobody is at work in the app but whoever has shown who they are", () => {
  const app = join(import.meta.dirname, "..", "..", "app");
  const files = readdirSync(app, { recursive: true, encoding: "utf8" }).filter((file) => /\.tsx?$/.test(file));
  const naming = files.filter((file) => /\b(actAs|asActor)\(/.test(readFileSync(join(app, file), "utf8")));
  expect(naming.toSorted()).toEqual(Object.keys(namers).toSorted());
  for (const file of naming) expect(readFileSync(join(app, file), "utf8")).toMatch(namers[file] ?? /(?!)/);
});
