import { generateKeyPairSync, randomBytes, sign } from "node:crypto";

/** A key and a certificate for one name that nobody has vouched for, made as RFC 5280 lays them out; valid for a day. */
export function selfSigned(host: string): { readonly key: string; readonly cert: string } {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "prime256v1" });
  const subject = sequence(set(sequence(objectId(2, 5, 4, 3), der(0x0c, Buffer.from(host)))));
  const signedBy = sequence(objectId(1, 2, 840, 10045, 4, 3, 2)); // ecdsa-with-SHA256
  const from = Date.now() - 3_600_000;
  const names = sequence(der(0x82, Buffer.from(host)));
  const body = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))), // version 3
    der(0x02, Buffer.concat([Buffer.from([1]), randomBytes(8)])),
    signedBy,
    subject,
    sequence(instant(from), instant(from + 86_400_000)),
    subject,
    publicKey.export({ type: "spki", format: "der" }),
    der(0xa3, sequence(sequence(objectId(2, 5, 29, 17), der(0x04, names)))), // subjectAltName
  );
  const certificate = sequence(body, signedBy, der(0x03, Buffer.from([0]), sign("sha256", body, privateKey)));
  const lines = certificate.toString("base64").match(/.{1,64}/g) ?? [];
  return {
    key: privateKey.export({ type: "pkcs8", format: "pem" }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${lines.join("\n")}\n-----END CERTIFICATE-----\n`,
  };
}

function der(tag: number, ...parts: readonly Buffer[]): Buffer {
  const content = Buffer.concat(parts);
  const { length } = content;
  const size = length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}

const sequence = (...parts: readonly Buffer[]) => der(0x30, ...parts);
const set = (...parts: readonly Buffer[]) => der(0x31, ...parts);

/** UTCTime, good until 2049. */
function instant(at: number): Buffer {
  const digits = new Date(at).toISOString().replaceAll(/[-:T]/g, "").slice(2, 14);
  return der(0x17, Buffer.from(`${digits}Z`));
}

function objectId(first: number, second: number, ...others: readonly number[]): Buffer {
  const bytes = others.flatMap((number) => {
    const sevens = [number & 0x7f];
    for (let rest = number >> 7; rest > 0; rest >>= 7) sevens.unshift((rest & 0x7f) | 0x80);
    return sevens;
  });
  return der(0x06, Buffer.from([first * 40 + second, ...bytes]));
}
