import type { conflicts as english } from '../en/conflicts.ts';

export const conflicts = {
  'conflict.edited-meanwhile':
    'Das wurde inzwischen in einem anderen Fenster bearbeitet. Nichts wurde gespeichert. Wählen Sie, was gelten soll.',
  'conflict.saved': 'Inzwischen gespeichert: {savedText}',
  'conflict.blank': '(leer)',
  'conflict.keep-mine': 'Meine Eingabe nehmen',
  'conflict.use-theirs': 'Das Gespeicherte nehmen',
} satisfies Record<keyof typeof english, string>;
