import { request as ask } from "node:http";
import { createServer } from "node:https";
import type { AddressInfo } from "node:net";
import { selfSigned } from "./self-signed";

export interface TlsProxy {
  readonly port: number;
  /** To be trusted by whoever asks it. */
  readonly certificate: string;
  stop(): Promise<void>;
}

/**
 * What stands in front of the site where it is hosted: takes TLS off, drops what came with the request about its own
 * origin, and says that itself (see app/hosting/README.md).
 */
export async function tlsProxy(host: string, sitePort: number): Promise<TlsProxy> {
  const { key, cert } = selfSigned(host);
  const server = createServer({ key, cert }, (request, response) => {
    const passed = Object.entries(request.headers).filter(([name]) => !/^(x-)?forwarded/.test(name));
    const onward = ask(
      {
        host: "127.0.0.1",
        port: sitePort,
        method: request.method,
        path: request.url,
        headers: {
          ...Object.fromEntries(passed),
          "x-forwarded-proto": "https",
          "x-forwarded-host": request.headers.host,
          "x-forwarded-for": request.socket.remoteAddress,
        },
      },
      (answer) => {
        response.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(response);
      },
    );
    onward.on("error", () => response.writeHead(502).end());
    request.pipe(onward);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return {
    port: (server.address() as AddressInfo).port, // it listens on a port
    certificate: cert,
    stop: () => new Promise((done) => server.close(() => done())),
  };
}
