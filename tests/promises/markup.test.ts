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
const bodies = [
  "alert(1)",
  "fetch('//x')",
  "document.cookie",
  "alert`1`",
  "&#97;lert(1)",
  "\\u0061lert(1)",
  "top['al'+'ert'](1)",
  "import('//x')",
];
const ways: readonly ((body: string) => string)[] = [
  (body) => `<script>${body}</script>`,
  (body) => `<ScRiPt >${body}</sCrIpT >`,
  (body) => `<script src=//x></script>${body}`,
  (body) => `<img src=x onerror=${body}>`,
  (body) => `<img/src/onerror=${body}//`,
  (body) => `<input autofocus onfocus="${body}">`,
  (body) => `<details open ontoggle="${body}">`,
  (body) => `<body onload=${body}>`,
  (body) => `<video><source onerror=${body}>`,
  (body) => `"><svg onload=${body}>`,
  (body) => `<svg><animate onbegin=${body} attributeName=x>`,
  (body) => `<math><mtext><img src onerror=${body}>`,
  (body) => `" onmouseover="${body}`,
  (body) => `' onmouseover='${body}`,
  (body) => `'><iframe srcdoc="<script>${body}</script>">`,
  (body) => `<object data="javascript:${body}">`,
  (body) => `<form action="javascript:${body}"><button>`,
  (body) => `<base href="javascript:${body}//">`,
  (body) => `<meta http-equiv=refresh content="0;url=javascript:${body}">`,
  (body) => `</td><script>${body}</script>`,
  (body) => `</title></textarea></style><script>${body}</script>`,
  (body) => `<a href="javascript:${body}">x</a>`,
  (body) => `<a href="java\tscript:${body}">x</a>`,
  (body) => `\u003cscript\u003e${body}`,
  (body) => `&lt;script&gt;${body}&lt;/script&gt;`,
  (body) => `＜script＞${body}`,
  (body) => `<scr\u0000ipt>${body}</script>`,
  (body) => `{{constructor.constructor('${body}')()}}`,
  (body) => `\${${body}}`,
  (body) => `<style>@import '//x'</style>${body}`,
  (body) => `<!--><script>${body}</script>-->`,
  (body) => `]]><script>${body}</script>`,
];
const hostile = bodies.flatMap((body) => ways.map((way) => way(body)));

test("the set has two hundred words and more", () => {
  expect(new Set(hostile).size).toBeGreaterThan(200);
});

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
  const marks = { "&lt;": "<", "&gt;": ">", "&quot;": '"', "&#x27;": "'", "&amp;": "&" };
  const read = html.replace(/&(?:lt|gt|quot|#x27|amp);/g, (mark) => marks[mark as keyof typeof marks]); // the five above
  expect(read.split(text).length - 1).toBeGreaterThan(6);
  expect(html.replace(/="[^"]*"/g, "")).not.toMatch(/<[^>]*\son[a-z]+/i);
});
