import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { pageActs, routeActs } from "@/app/_people/route-acts";
import { actKeys, may } from "@/lib/people/permissions";

const app = join(import.meta.dirname, "..", "..", "app");
const files = readdirSync(app, { recursive: true, encoding: "utf8" }).filter((file) => /\.tsx?$/.test(file));
const textOf = (file: string) => readFileSync(join(app, file), "utf8");

/** "/jobs/[number]" of jobs/[number]/page.tsx. */
const routeOf = (file: string) => `/${file.split("/").slice(0, -1).join("/")}`;

/** The first statement of a function whose head ends where `from` points. */
function firstStatements(text: string, from: number): string {
  return text.slice(from).split(/\n\}/)[0] ?? "";
}

describe("pages", () => {
  const pages = files.filter((file) => /(^|\/)page\.tsx$/.test(file) && !file.startsWith("_"));
  const acts: Readonly<Record<string, string>> = pageActs;

  test("there are some, and each stands in the table", () => {
    expect(pages.length).toBeGreaterThan(60);
    expect(pages.map(routeOf).sort()).toEqual(Object.keys(pageActs).sort());
  });

  test.each(pages.filter((file) => acts[routeOf(file)] !== "anybody"))(
    "%s asks who opens it before anything else",
    (file) => {
      const text = textOf(file);
      const head = text.indexOf("export default async function");
      expect(head, "the page must be an async function").toBeGreaterThan(0);
      const first = firstStatements(text, text.indexOf("{\n", head)).split(";")[0] ?? "";
      expect(first).toMatch(/await mayOpen(Job)?\(/);
      expect(first).toContain(`"${routeOf(file)}"`);
    },
  );

  test("no page makes its title from data before it has asked", () => {
    expect(files.filter((file) => textOf(file).includes("generateMetadata"))).toEqual([]);
  });
});

describe("routes", () => {
  const routes = files
    .filter((file) => /(^|\/)route\.tsx?$/.test(file))
    .flatMap((file) =>
      [...textOf(file).matchAll(/export (?:async )?function (GET|HEAD|POST|PUT|PATCH|DELETE|OPTIONS)\(/g)].map(
        ({ 1: method = "" }) => ({ file, method, key: `${method} ${routeOf(file)}` }),
      ),
    );
  const acts: Readonly<Record<string, string>> = routeActs;

  test("there are some, and each stands in the table", () => {
    expect(routes.length).toBeGreaterThan(30);
    expect(routes.map(({ key }) => key).sort()).toEqual(Object.keys(routeActs).sort());
  });

  test("none is exported in another way than the table can see", () => {
    const others = files.filter(
      (file) =>
        /(^|\/)route\.tsx?$/.test(file) && /export (const (GET|POST|PUT|PATCH|DELETE)|\{|\* )/.test(textOf(file)),
    );
    expect(others).toEqual([]);
  });

  test.each(routes.filter(({ key }) => acts[key] !== "anybody" && acts[key] !== "key"))(
    "$key asks who calls it",
    ({ file, key, method }) => {
      const text = textOf(file);
      const body = firstStatements(text, text.search(new RegExp(`export async function ${method}\\(`)));
      const guard = body.indexOf(`"${key}"`);
      expect(body.slice(0, guard)).toMatch(/const caller = await mayCall(OnJob)?\(request, $/);
      expect(body.slice(guard)).toMatch(/^[^;]*;\s*if \(!caller\.ok\) return caller\.response;/);
      expect(body.slice(0, guard)).not.toMatch(/readOnly|inTransaction|request\.(json|text|formData|body)/);
    },
  );
});

describe("actions", () => {
  const actions = files
    .filter((file) => /^"use server";/m.test(textOf(file)))
    .flatMap((file) =>
      [...textOf(file).matchAll(/export async function (\w+)\([^{]*\{\n/g)].map((head) => ({
        file,
        name: head[1] ?? "",
        first: firstStatements(textOf(file), head.index + head[0].length).split(";")[0] ?? "",
      })),
    );
  /** Before somebody is signed in, and the colours of one browser; each looks at the Origin by itself or changes nothing of the company. */
  const open: Readonly<Record<string, RegExp>> = {
    "_ui/save-view-settings.ts saveViewSettings": /cookies\(\)/,
    "_people/sign-out.ts signOut": /headers\(\)/,
    "sign-in/actions.ts signIn": /comesFromThisSite/,
    "sign-in/actions.ts showCode": /comesFromThisSite/,
    "set-up/actions.ts setUp": /comesFromThisSite/,
    "join/[token]/actions.ts join": /comesFromThisSite/,
  };

  test("there are some", () => {
    expect(actions.length).toBeGreaterThan(45);
  });

  test.each(actions)("$name in $file asks who does it before anything else", ({ file, name, first }) => {
    const exception = open[`${file} ${name}`];
    if (exception !== undefined) return expect(first).toMatch(exception);
    const act = /await mayDo(?:OnJob)?\(\s*"([\w.]+)"/.exec(first)?.[1];
    expect(actKeys).toContain(act);
  });
});

describe("of one job", () => {
  const guards: Readonly<Record<string, string>> = { ...pageActs, ...routeActs };
  const ofTechnicians = (act: string | undefined) => actKeys.some((key) => key === act && may("technician", key));
  /** Every first line behind an address with a job's number that a technician may come to: which guard, for which act. */
  const lines = files
    .filter((file) => /(^|\/)\[number\]\//.test(file))
    .flatMap((file) =>
      [...textOf(file).matchAll(/await (may(?:Open|Call|Do)\w*)\((?:request, )?"([^"]+)"/g)].map(
        ({ 1: guard = "", 2: key = "" }) => ({ file, guard, act: guards[key] ?? key }),
      ),
    )
    .filter(({ act }) => ofTechnicians(act));

  test("there are some pages, addresses and actions", () => {
    for (const guard of ["mayOpenJob", "mayCallOnJob", "mayDoOnJob"])
      expect(lines.map((line) => line.guard)).toContain(guard);
    expect(lines.length).toBeGreaterThan(10);
  });

  test.each(lines)("$file asks whose job it is as well: $guard", ({ guard }) => {
    expect(guard).toMatch(/Job$/);
  });
});
