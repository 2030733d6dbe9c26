interface Texts {
  name: string;
  note: string;
  group?: string;
}
type Named = (name: string) => string;

/** A record as a form shows it: texts that come with the app in the language on screen. */
export const inWords = <T extends Texts>(record: T, named: Named): T => ({
  ...record,
  name: named(record.name),
  note: named(record.note),
  ...(record.group !== undefined && { group: named(record.group) }),
});

/**
 * What a form made of it, as it is to be saved: a text that nobody typed over stays the app's own, so that it is shown in
 * every language.
 *
 * @param groups  those that there are: one typed as it is shown is that one
 */
export const asSaved = <T extends Texts>(typed: T, saved: Texts, named: Named, groups: string[] = []): T => ({
  ...typed,
  name: typed.name === named(saved.name) ? saved.name : typed.name,
  note: typed.note === named(saved.note) ? saved.note : typed.note,
  ...(typed.group !== undefined && {
    group: groups.find((group) => named(group) === typed.group) ?? typed.group,
  }),
});
