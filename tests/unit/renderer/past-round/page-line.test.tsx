// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { PageLine } from '../../../../renderer/features/past-round/PageLine.tsx';
import { PAIRS } from '../../../../shared-core/probing/readings/plan-basis.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aReading } from '../round/a-round.ts';
import { forgetEverything, playMachine } from '../shell/machine.ts';
import { aPageBoard } from './a-page-board.ts';

beforeEach(forgetEverything);
afterEach(cleanup);

const jump = message('suspicion.jump.expected', {
  depth: 'shell',
  beforePct: 14.4,
  mcPct: 38.2,
  days: 525,
  placeName: 'Shed',
  expectedPct: 13,
});
const wet = message('suspicion.surface-wet', { shellPct: 38.2, corePct: 20 });

/** A line whose readings of 38 are far from those of another day, and on a wet face. */
function show(hasDay: boolean, texts = ['38']): void {
  playMachine({
    'pastRounds.check': () => {
      const { unit, corrected, spot } = aReading(1);
      const questionable = { severity: 'questionable', whatToDo: wet } as const;
      const suspicions = [
        { ...questionable, rule: 'jump-since-last-round' as const, why: jump },
        { ...questionable, rule: 'surface-wet' as const, why: wet },
      ];
      return {
        planBasis: PAIRS,
        cells: texts.map((_, column) => ({
          column,
          raw: 38,
          unit,
          corrected,
          spot,
          counts: true,
          suspicions,
        })),
      };
    },
  });
  render(
    <table>
      <tbody>
        <PageLine
          board={aPageBoard(1)}
          heads={['Shell 1', 'Shell 2']}
          texts={texts}
          unit="pct"
          known={{
            stackId: 1,
            meterId: null,
            unit: 'pct',
            woodTempC: 20,
            airTempC: null,
            depths: texts.map(() => 'unknown' as const),
            startedAt: '2026-05-04T08:00:00.000Z',
          }}
          hasDay={hasDay}
          onUse={() => undefined}
          cell={() => null}
        />
      </tbody>
    </table>,
  );
}

test('without a day, a reading is not compared with that of another day', async () => {
  show(false);
  expect(await screen.findByText(/The face looks wet/)).toBeTruthy();
  expect(screen.queryByText(/525 days/)).toBeNull();
});

test('with its day, it is', async () => {
  show(true);
  expect(await screen.findByText(/525 days/)).toBeTruthy();
});

test('a remark names its columns as their heads do', async () => {
  show(false, ['38', '38']);
  expect(await screen.findByText(/^Shell 1 and Shell 2: .*The face looks wet/)).toBeTruthy();
});

describe('of readings above the meter’s scale, only', () => {
  test('the least is told, where all are', async () => {
    show(false, ['>38', '38+']);
    expect(await screen.findByText(/^Corrected: above [\d.]+%$/)).toBeTruthy();
  });

  test('the least is told beside the others', async () => {
    show(false, ['38', '>38']);
    expect(await screen.findByText(/^Corrected: [\d.]+%, and above [\d.]+%$/)).toBeTruthy();
  });
});
