/** More different texts than this are not kept. */
const MOST_HELD = 2000;

/**
 * Parses the same text only once: a species, a place or a meter is read again for every board of a round. What comes
 * back is shared, and never to be changed.
 */
export function parsedOnce<T, Text>(parse: (text: Text) => T): (text: Text) => T {
  const held = new Map<Text, T>();
  return (text) => {
    const known = held.get(text);
    if (known !== undefined) return known;
    const parsed = parse(text);
    if (held.size >= MOST_HELD) held.clear();
    held.set(text, parsed);
    return parsed;
  };
}
