/** A free id made of a name: "Norway spruce, own" becomes `norway-spruce-own`, or with a number where that is taken. */
export function idOfName(name: string, taken: ReadonlySet<string>): string {
  const stem =
    name
      .normalize('NFKD')
      .toLowerCase()
      .replace(/\p{M}/gu, '')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 50)
      .replace(/-+$/, '') || 'own';
  let id = stem;
  for (let number = 2; taken.has(id); number++) id = `${stem}-${number}`;
  return id;
}
