export function say(what: string, value: string): void {
  console.log(`${what.padEnd(78)} ${value.padStart(14)}`);
}
