import type { Asked } from '../../renderer/data/useQuery.ts';
import { Await } from '../../renderer/ui/Await.tsx';
import { Banner } from '../../renderer/ui/Banner.tsx';
import { Button } from '../../renderer/ui/Button.tsx';
import { CallBadge, callsInOrder } from '../../renderer/ui/CallBadge.tsx';
import { EndGrain } from '../../renderer/ui/EndGrain.tsx';
import { Facts } from '../../renderer/ui/Facts.tsx';
import { McValue } from '../../renderer/ui/McValue.tsx';
import { PhaseMark } from '../../renderer/ui/PhaseMark.tsx';
import { EmptyState, Sheet } from '../../renderer/ui/Screen.tsx';
import type { Corrected } from '../../shared-core/wood/moisture/corrected.ts';
import type { Story } from './story.ts';

const corrected: Corrected = {
  mcPct: 13.7,
  steps: [
    { step: 'temperature', pct: 13.1 },
    { step: 'species-curve', pct: 13.7 },
  ],
  standardUncertaintyPct: 0.8,
  warnings: [],
};
const asked: Asked<string> = { output: null, error: null, loading: false, again: () => undefined };

export const stories: Story[] = [
  {
    part: 'Banner',
    states: {
      info: () => <Banner>The meter is used by another window.</Banner>,
      done: () => <Banner kind="done">Saved.</Banner>,
      caution: () => <Banner kind="caution">Pins are sharp.</Banner>,
      'problem, with a way on': () => (
        <Banner kind="problem" actions={<Button>Try again</Button>}>
          The disk is full or failing.
        </Banner>
      ),
    },
  },
  {
    part: 'CallBadge',
    states: Object.fromEntries(
      callsInOrder.flatMap((call) => [
        [call, () => <CallBadge call={call} />],
        [`${call}, large`, () => <CallBadge call={call} size="large" />],
      ]),
    ),
  },
  {
    part: 'PhaseMark',
    states: {
      'pins out': () => <PhaseMark phase="pins-out" />,
      drifting: () => <PhaseMark phase="drifting" />,
      settled: () => <PhaseMark phase="settled" />,
    },
  },
  {
    part: 'McValue',
    isWide: true,
    states: {
      text: () => <McValue corrected={corrected} raw={14.5} unit="pct" />,
      huge: () => <McValue corrected={corrected} raw={14.5} unit="pct" size="huge" />,
      'not used': () => <McValue corrected={corrected} raw={14.5} unit="pct" struck />,
      'temperature unknown': () => (
        <McValue corrected={{ ...corrected, warnings: ['temperature-unknown'] }} raw={14.5} unit="pct" />
      ),
      'above the meter’s range': () => <McValue corrected={null} raw={61} unit="pct" />,
    },
  },
  {
    part: 'EndGrain',
    states: {
      'flat-sawn': () => (
        <EndGrain
          board={{ thicknessMm: 30, widthMm: 200, sawing: 'flat', barkSide: 'up', ringRadiusMm: 150 }}
        />
      ),
    },
  },
  {
    part: 'Facts',
    states: {
      'of three, one unknown': () => (
        <Facts
          of={[
            ['Unit', '% moisture content'],
            ['Byte order', null],
            ['Can show', '5–60%'],
          ]}
        />
      ),
    },
  },
  {
    part: 'Await',
    states: {
      loading: () => <Await of={[asked]}>{(text) => text}</Await>,
      failed: () => (
        <Await of={[{ ...asked, error: 'Another program is using the yard file.' }]}>{(text) => text}</Await>
      ),
    },
  },
  {
    part: 'Screen',
    states: {
      'nothing yet': () => (
        <EmptyState sentence="No stacks yet.">
          <Button kind="main">Add a stack</Button>
        </EmptyState>
      ),
      sheet: () => (
        <Sheet title="Readings" actions={<Button>Edit</Button>}>
          <p>Eight readings.</p>
        </Sheet>
      ),
    },
  },
];
