import { createHash, createHmac, pbkdf2Sync, randomBytes } from "node:crypto";

const rounds = 4096;

/**
 * What PostgreSQL keeps of a password (RFC 5803): given in its place, the password itself is in no statement, and so in
 * no log of the server. For passwords of ASCII only, which need no preparation.
 */
export function scramVerifier(password: string, salt: Buffer = randomBytes(16)): string {
  const salted = pbkdf2Sync(password, salt, rounds, 32, "sha256");
  const stored = createHash("sha256").update(keyed(salted, "Client Key")).digest("base64");
  return `SCRAM-SHA-256$${rounds}:${salt.toString("base64")}$${stored}:${keyed(salted, "Server Key").toString("base64")}`;
}

function keyed(key: Buffer, text: string): Buffer {
  return createHmac("sha256", key).update(text).digest();
}
