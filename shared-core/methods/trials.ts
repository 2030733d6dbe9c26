import { type Message, message } from '../words/message.ts';
import { type MethodPart, partOf } from './method-part.ts';

/** What a bench found, of several cases in the hardest; `npm run bench` says where it finds otherwise now. */
interface Trial {
  /** Of its sentence: of a hundred or a thousand of what. */
  id: string;
  /** A file of `tests/bench`. */
  bench: string;
  found: number;
  goal: { least?: number; most?: number };
}

export const trials = [
  {
    id: 'wrong-ready',
    bench: 'calls-by-harm',
    found: 1.4,
    goal: { most: 1 },
  },
  {
    id: 'fine-ready',
    bench: 'calls-by-harm',
    found: 64.5,
    goal: { least: 70 },
  },
  {
    id: 'fine-ready-unknown',
    bench: 'calls-by-harm',
    found: 30.3,
    goal: { least: 70 },
  },
  {
    id: 'interval',
    bench: 'coverage',
    found: 86.4,
    goal: { least: 85 },
  },
  {
    id: 'records',
    bench: 'records',
    found: 96,
    goal: { least: 70, most: 90 },
  },
  {
    id: 'faults',
    bench: 'suspicion',
    found: 90.3,
    goal: { least: 90 },
  },
  {
    id: 'alarms',
    bench: 'suspicion',
    found: 0.9,
    goal: { most: 1 },
  },
  {
    id: 'settled',
    bench: 'settling',
    found: 0.4,
    goal: { most: 1 },
  },
] as const satisfies readonly Trial[];

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
      rows: trials.map(({ id, found, goal, bench }) => [
        message(`methods.trials.${id}`),
        found,
        goalOf(goal),
        bench,
      ]),
    },
  );
