import { render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { BoardScreen } from '../../../../renderer/features/board/BoardScreen.tsx';
import { useSettings } from '../../../../renderer/stores/settings.ts';
import type { RequestOutput } from '../../../../shared-core/contract/requests.ts';
import type { Settings } from '../../../../shared-core/contract/settings.ts';
import type { Move } from '../../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../../shared-core/words/message.ts';
import { aReading } from '../round/a-round.ts';
import { playMachine } from '../shell/machine.ts';
import { aBoardRow, aFinding, aStack } from '../stacks/a-yard.ts';
import { answerOf } from './a-forecast.ts';

export type Found = RequestOutput<'boards.get'>;

const aMove = (id: number, where: Pick<Move, 'placeId' | 'placeName' | 'since'>): Move => ({
  id,
  version: 1,
  boardId: 1,
  datedBy: 'day',
  ...where,
});

/** A board probed twice, last on August 22, when it was too wet. */
export const found: Found = {
  board: aBoardRow(1, { latest: aFinding() }),
  moves: [
    aMove(1, { placeId: 1, placeName: 'Fence row', since: new Date(2026, 2, 3, 12).toISOString() }),
    aMove(2, { placeId: 2, placeName: 'Pole shed', since: new Date(2026, 5, 1, 12).toISOString() }),
  ],
  readings: [
    aReading(11, { roundId: 7 }),
    aReading(12, { roundId: 7, counts: false, excluded: { text: 'Wet face' } }),
    aReading(9, { roundId: 6 }),
  ],
  findings: [
    aFinding({
      roundId: 6,
      at: new Date(2026, 4, 9, 12).toISOString(),
      averagePct: 21.2,
      lowPct: 19.4,
      highPct: 23,
      shellPct: 19.1,
      corePct: 23.4,
    }),
    aFinding(),
  ],
  isSpeciesConfirmed: false,
  cameFrom: [],
  becameOf: [],
  readBefore: [],
  missing: [],
};

/** What the machine answers when a reading was excluded; the board's page asks for all of it again. */
const owner = { roundId: 1, boardId: 1, stackId: 1 };

/** The page of a board, of which no forecast can be made unless `more` has one. */
export function openBoard(
  board: Found = found,
  more: Parameters<typeof playMachine>[0] = {},
  { tab = null, units = 'metric' }: { tab?: string | null; units?: DisplayUnits } = {},
) {
  useSettings.setState({ settings: { units } as Settings });
  const machine = playMachine({
    'boards.get': () => board,
    'stacks.get': () => aStack(),
    'rounds.ofBoard': () => [],
    'stacks.list': () => [aStack()],
    'samples.get': () => ({
      boardId: 1,
      cuts: [],
      weights: [],
      target: null,
      status: message('weights.no-sections'),
    }),
    'ovenChecks.ofSpecies': () => [],
    'boards.forecast': () =>
      answerOf(null, {
        found: board.board.latest,
        whyNot: message('forecast.none-to-begin-with'),
      }),
    'endUses.list': () => builtInEndUses.map((endUse) => ({ ...endUse, version: 1, builtIn: true })),
    'species.list': () => builtInSpecies.map((species) => ({ ...species, version: 1, builtIn: true })),
    'places.list': () => [],
    'stacks.ifMoved': () => ({ boards: 1, places: [] }),
    'readings.exclude': () => owner,
    'readings.include': () => owner,
    ...more,
  });
  render(
    <main>
      <BoardScreen id={1} tab={tab} />
    </main>,
  );
  return { machine, user: userEvent.setup() };
}

/** A part of the page with a heading. */
export const region = async (name: string) => within(await screen.findByRole('region', { name }));
/** The tab that is shown. */
export const panel = async (name: string | RegExp) => within(await screen.findByRole('tabpanel', { name }));
