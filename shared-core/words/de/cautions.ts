import type { cautions as english } from '../en/cautions.ts';

export const cautions = {
  'caution.checks':
    'Zu feucht für einen beheizten Raum: Es kann reißen, auch innen. Trocknen Sie es zuerst unter Dach bis {dryEnoughLimitPct}, innen bis {coreLimitPct}. Vor allem langsam trocknende Holzarten und dicke Bretter brauchen das.',
  'caution.insects':
    'Lufttrocknung tötet keine Insekten. Suchen Sie nach Löchern und Bohrmehl, bevor das Holz ins Haus kommt.',
  'caution.framing':
    'Trocken heißt nicht tragfähig. Für tragende Bauteile gelten die Sortierregeln und die örtlichen Bauvorschriften.',
  'caution.firewood-burn': 'Verbrennen Sie es in einem intakten Ofen mit gekehrtem Schornstein.',
  'caution.firewood-move':
    'Mit Brennholz reisen Schädlinge. Prüfen Sie die örtlichen Regeln, bevor Sie es weit fahren.',
} satisfies Record<keyof typeof english, string>;
