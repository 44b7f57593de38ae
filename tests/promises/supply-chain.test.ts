import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { z } from "zod";

const root = join(import.meta.dirname, "..", "..");
const read = (file: string): unknown => JSON.parse(readFileSync(join(root, file), "utf8"));

const wanted = z
  .object({ dependencies: z.record(z.string(), z.string()), devDependencies: z.record(z.string(), z.string()) })
  .parse(read("package.json"));
const packages = z
  .object({
    packages: z.record(
      z.string(),
      z.looseObject({
        version: z.string().optional(),
        resolved: z.string().optional(),
        integrity: z.string().optional(),
        license: z.string().optional(),
        dev: z.boolean().optional(),
        inBundle: z.boolean().optional(),
      }),
    ),
  })
  .parse(read("package-lock.json")).packages;
const installed = Object.entries(packages).filter(([path]) => path !== "");

test("each package is asked for in one exact version", () => {
  const asked = Object.entries({ ...wanted.dependencies, ...wanted.devDependencies });
  expect(asked.filter(([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/.test(version))).toEqual([]);
});

test("every package of the lock file is held by the hash of its content", () => {
  expect(
    installed
      .filter(([, { integrity, inBundle }]) => integrity === undefined && inBundle !== true)
      .map(([path]) => path),
  ).toEqual([]);
});

/** Those that let the program be used and passed on; of weak copyleft only what stays a library of its own. */
const known =
  /^(?:MIT|MIT-0|ISC|Apache-2\.0|BSD-2-Clause|BSD-3-Clause|0BSD|BlueOak-1\.0\.0|Unlicense|CC0-1\.0|CC-BY-4\.0|OFL-1\.1|Python-2\.0|Zlib|PostgreSQL|MPL-2\.0|LGPL-3\.0(?:-or-later)?)$/;

/** Packages whose own list does not name it, as their licence files were read. */
const readByHand: Readonly<Record<string, string>> = {
  "node_modules/dejavu-fonts-ttf":
    "Bitstream Vera and Arev terms: fonts may be embedded, passed on and changed under another name",
  "node_modules/png-js": "MIT",
};

test("the licence of every package that is shipped is one of those that are known and allowed", () => {
  const words = (licence: string) => licence.replace(/[()]/g, "").split(/ (?:OR|AND) /);
  const strange = installed
    .filter(([path, { dev }]) => dev !== true && !(path in readByHand))
    .map(([path, { license }]) => [path, license ?? "none given"] as const)
    .filter(([, licence]) => !words(licence).every((word) => known.test(word)));
  expect(strange).toEqual([]);
});
