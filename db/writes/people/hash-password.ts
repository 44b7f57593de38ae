import { randomBytes, scrypt, timingSafeEqual } from "node:crypto";

/** 128 MiB and about 0.4 s for one: scrypt with N = 2^17, r = 8, p = 1 (OWASP's first choice where Argon2 is not at hand). */
export const cost = { N: 2 ** 17, r: 8, p: 1, maxmem: 256 * 2 ** 20 } as const;

/** The hash of a password with all that is needed to check it later: scrypt$N$r$p$salt$hash. */
export async function hashPassword(password: string): Promise<string> {
  const salt = randomBytes(16);
  const hash = await derive(password, salt, cost);
  return ["scrypt", cost.N, cost.r, cost.p, salt.toString("base64url"), hash.toString("base64url")].join("$");
}

/** @param stored  what `hashPassword` gave; anything else is no match */
export async function passwordMatches(password: string, stored: string): Promise<boolean> {
  const [kind, N, r, p, salt, hash] = stored.split("$");
  if (kind !== "scrypt" || salt === undefined || hash === undefined) return false;
  const kept = Buffer.from(hash, "base64url");
  if (kept.length !== hashBytes) return false;
  const settings = { N: Number(N), r: Number(r), p: Number(p), maxmem: cost.maxmem };
  const made = await derive(password, Buffer.from(salt, "base64url"), settings);
  return timingSafeEqual(made, kept);
}

const hashBytes = 32;

/** At most two at once: a crowd of strangers who try passwords must not take the memory of those who work. */
const mostAtOnce = 2;
let running = 0;
const waiting: (() => void)[] = [];

async function derive(password: string, salt: Buffer, settings: typeof cost | Settings): Promise<Buffer> {
  if (running >= mostAtOnce) await new Promise<void>((go) => waiting.push(go));
  else running += 1;
  try {
    return await new Promise<Buffer>((resolve, reject) =>
      scrypt(password, salt, hashBytes, settings, (error, key) => (error === null ? resolve(key) : reject(error))),
    );
  } finally {
    const next = waiting.shift();
    if (next === undefined) running -= 1;
    else next(); // the place is handed on, still counted
  }
}

interface Settings {
  readonly N: number;
  readonly r: number;
  readonly p: number;
  readonly maxmem: number;
}
