import { type Message, message } from '../words/message.ts';
import { type MethodPart, partOf } from './method-part.ts';

/** What a bench found; `npm run bench` says where it finds otherwise now. */
interface Trial {
  /** Of a hundred or a thousand of what. */
  what: Message;
  /** A file of `tests/bench`. */
  bench: string;
  /** How the names of its figures begin. Of several, that of the hardest case is found. */
  figures: string;
  hardest: 'least' | 'most';
  found: number;
  goal: { least?: number; most?: number };
}

export const trials: readonly Trial[] = [
  {
    what: message('methods.trials.wrong-ready'),
    bench: 'calls-by-harm',
    figures: 'wrong Ready',
    hardest: 'most',
    found: 1.4,
    goal: { most: 1 },
  },
  {
    what: message('methods.trials.fine-ready'),
    bench: 'calls-by-harm',
    figures: 'fine boards Ready: known depths',
    hardest: 'least',
    found: 64.5,
    goal: { least: 70 },
  },
  {
    what: message('methods.trials.fine-ready-unknown'),
    bench: 'calls-by-harm',
    figures: 'fine boards Ready: depths only planned',
    hardest: 'least',
    found: 30.3,
    goal: { least: 70 },
  },
  {
    what: message('methods.trials.interval'),
    bench: 'coverage',
    figures: '90 % interval holds the average',
    hardest: 'least',
    found: 86.4,
    goal: { least: 85 },
  },
  {
    what: message('methods.trials.records'),
    bench: 'records',
    figures: 'dated records within',
    hardest: 'most',
    found: 96.3,
    goal: { least: 70, most: 90 },
  },
  {
    what: message('methods.trials.faults'),
    bench: 'suspicion',
    figures: 'gross faults found',
    hardest: 'least',
    found: 90.5,
    goal: { least: 90 },
  },
  {
    what: message('methods.trials.alarms'),
    bench: 'suspicion',
    figures: 'false alarms per 100',
    hardest: 'most',
    found: 1.3,
    goal: { most: 1 },
  },
  {
    what: message('methods.trials.settled'),
    bench: 'settling',
    figures: 'settled values saved wrong',
    hardest: 'most',
    found: 0.4,
    goal: { most: 1 },
  },
];

function goalOf({ least, most }: Trial['goal']): Message {
  if (least !== undefined && most !== undefined) return message('methods.trials.between', { least, most });
  return least === undefined
    ? message('methods.trials.at-most', { most: most! })
    : message('methods.trials.at-least', { least });
}

/** How often Pintally is right, as far as anyone has tried. */
export const trialMethods = (): MethodPart =>
  partOf(
    'trials',
    message('methods.trials.title'),
    [message('methods.trials.how'), message('methods.trials.limits')],
    null,
    {
      caption: message('methods.trials.caption'),
      heads: [
        message('methods.trials.what'),
        message('methods.trials.found'),
        message('methods.trials.goal'),
        message('methods.trials.program'),
      ],
      isOfUnlike: true,
      rows: trials.map(({ what, found, goal, bench }) => [what, found, goalOf(goal), bench]),
    },
  );
