// The handlers behind a real proxy that takes TLS off, as the site is hosted. What only the web server itself adds
// (the header that asks for TLS, redirects of pages) is tried on the built site by `npm run soak -- proxy`.
import { createServer } from "node:http";
import { request as askSecurely } from "node:https";
import type { AddressInfo } from "node:net";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { signInLibrary } from "@/app/_people/sign-in-library";
import { GET } from "@/app/account/session/route";
import { POST } from "@/app/files/upload/route";
import { closeDatabase } from "@/db/close-database";
import { processWidePromise } from "@/db/process-wide";
import { type TlsProxy, tlsProxy } from "../../tls-proxy";
import { somebody, testPassword } from "./signed-in";

const host = "claims.ohmsworth.example";
vi.stubEnv("OHMSWORTH_ORIGIN", `https://${host}`);

/** Handlers as the web server calls them: by the name of the host that was asked for, in plain HTTP. */
const site = createServer(async (incoming, response) => {
  const headers = Object.fromEntries(Object.entries(incoming.headers).map(([name, value]) => [name, String(value)]));
  const { method = "GET" } = incoming;
  const body = method === "GET" ? {} : { body: "serial\nA1\n" };
  const asked = new Request(`http://${host}${incoming.url}`, { method, headers, ...body });
  const answer = await (method === "GET" ? GET(asked) : POST(asked));
  response.writeHead(answer.status, Object.fromEntries(answer.headers));
  response.end(await answer.text());
});
let proxy: TlsProxy;

/** It reads the address of the site once, when it is first asked for anything. */
const forgetLibrary = () => processWidePromise("sign-in", async () => undefined).take();

beforeAll(async () => {
  await forgetLibrary();
  await new Promise<void>((done) => site.listen(0, "127.0.0.1", done));
  proxy = await tlsProxy(host, (site.address() as AddressInfo).port); // it listens on a port
});
afterAll(async () => {
  await proxy.stop();
  await new Promise((done) => site.close(done));
  vi.unstubAllEnvs();
  await forgetLibrary();
  await closeDatabase();
});

async function signIn(): Promise<string> {
  const { email } = await somebody("administrator");
  const { api } = await signInLibrary();
  const body = { email, password: testPassword };
  const { headers } = await api.signInEmail({ body, headers: new Headers(), returnHeaders: true });
  return headers.get("set-cookie") ?? "";
}

function ask(method: string, path: string, headers: Record<string, string>): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const asked = askSecurely(
      {
        host: "127.0.0.1",
        servername: host,
        port: proxy.port,
        ca: proxy.certificate,
        method,
        path,
        headers: { host, ...headers },
      },
      (answer) => {
        answer.resume();
        answer.once("end", () => resolve(answer.statusCode));
      },
    );
    asked.once("error", reject);
    asked.end();
  });
}

test("the session's cookie is kept for this host and for TLS only, and opens through the proxy", async () => {
  const cookie = await signIn();
  expect(cookie).toMatch(/^__Host-ohmsworth-session=/);
  expect(cookie).toMatch(/; Secure/i);
  expect(cookie).toMatch(/; HttpOnly/i);
  expect(cookie).toMatch(/; SameSite=Lax/i);
  expect(cookie).toMatch(/; Path=\/(;|$)/i);
  expect(cookie).not.toMatch(/Domain/i);
  const sent = cookie.split(";")[0] ?? "";
  expect(await ask("GET", "/account/session", { cookie: sent })).toBe(200);
  expect(await ask("GET", "/account/session", { cookie: sent.replace("__Host-", "") })).toBe(401);
});

test("a form from the site's own page is taken, one from elsewhere is not, whatever it says of its proxy", async () => {
  const cookie = (await signIn()).split(";")[0] ?? "";
  const send = (headers: Record<string, string>) => ask("POST", "/files/upload", { cookie, ...headers });
  expect(await send({ origin: `https://${host}`, "sec-fetch-site": "same-origin" })).toBe(400); // it lacks the file's name
  expect(await send({})).toBe(403);
  expect(await send({ origin: "https://elsewhere.example" })).toBe(403);
  expect(await send({ origin: "https://evil.example", "x-forwarded-host": "evil.example" })).toBe(403);
});
