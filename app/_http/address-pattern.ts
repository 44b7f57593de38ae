/** What the paths of one kind of address look like: `/claims/[claim]/packet.pdf`, with any one segment for what stands in brackets. */
export function addressPattern(kind: string): RegExp {
  return new RegExp(`^${kind.replaceAll(".", "\\.").replaceAll(/\[\w+\]/g, "[^/]+")}/?$`);
}
