import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { createElement, type ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Tag } from "@/app/_ui/tag";

const root = join(import.meta.dirname, "..", "..");

test("no page writes markup that it did not make itself", () => {
  const files = readdirSync(join(root, "app"), { recursive: true, encoding: "utf8" }).filter((file) =>
    /\.tsx?$/.test(file),
  );
  const writers =
    /dangerouslySetInnerHTML|\.innerHTML\b|\.outerHTML\b|insertAdjacentHTML|document\.write\(|\beval\(|new Function\(/;
  expect(files.length).toBeGreaterThan(300);
  expect(files.filter((file) => writers.test(readFileSync(join(root, "app", file), "utf8")))).toEqual([]);
});

/** Ways in which text was made to run: by its own tag, by an attribute, by leaving a quotation, by another alphabet. */
const bodies = ["alert(1)", "fetch('//x')", "document.cookie"];
const hostile = bodies.flatMap((body) => [
  `<script>${body}</script>`,
  `<img src=x onerror=${body}>`,
  `"><svg onload=${body}>`,
  `'><iframe srcdoc="<script>${body}</script>">`,
  `</td><script>${body}</script>`,
  `<a href="javascript:${body}">x</a>`,
  `\u003cscript\u003e${body}`,
  `＜script＞${body}`,
  `<scr\u0000ipt>${body}</script>`,
  `{{constructor.constructor('${body}')()}}`,
  `<style>@import '//x'</style>${body}`,
  `<!--><script>${body}</script>-->`,
]);

test.each(hostile)("%s is shown as it was written, and is no markup", (text) => {
  const shown = (...children: ReactNode[]) => renderToStaticMarkup(createElement("main", { title: text }, ...children));
  const html = shown(
    text,
    Notice({ status: "watch", title: text, children: text }),
    createElement(DefinitionList, { items: [{ term: text, detail: text, source: text }] }),
    Tag({ children: text }),
  );
  const tags = [...html.matchAll(/<\/?([a-z0-9]+)/gi)].map(([, name]) => name);
  const ours = /^(?:main|section|div|p|dl|dt|dd|span|svg|path|circle|rect|polygon|line|g)$/;
  expect(tags.filter((name) => !ours.test(name ?? ""))).toEqual([]);
  expect(html.replace(/="[^"]*"/g, "")).not.toMatch(/<[^>]*\son[a-z]+/i);
});
