import type { BoardOfRound } from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { evidence, lastRound, plainSpecies, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5, airTempC: 15 } as const;
const BEFORE = '2026-05-06T10:00:00Z';
export const elm: Species = { ...plainSpecies, id: 'elm', name: 'Elm', curveId: 'elm-american' };

/**
 * American elm on the curve of the meter's scale: what Douglas-fir shows 17 % at (7.1 MΩ) is 14.0 % in elm, and 20 %
 * (2.14 MΩ) is 16.3 %: W. L. James, FPL-GTR-6 (1988), Table 1 (from memory), between its rows in log resistance.
 */
export const ELM = { shell: { shown: 17, mcPct: 14.0 }, core: { shown: 20, mcPct: 16.3 } };

type Round = { shell: number; core: number };
/** A board whose readings are typed as the meter shows them, and what its last round was judged to be. */
export function board(before: Round, now: Round | null, species = plainSpecies): BoardOfRound['evidence'] {
  const previous = { ...lastRound(before.shell, before.core, BEFORE), moved: false };
  const bare = evidence(readings([10], [10]), { place: shed, species, previous });
  const should = expectationNow(bare, TAKEN_AT)!;
  const { shell, core } = now ?? { shell: should.shell!.pct, core: should.core!.pct };
  return { ...bare, readings: readings([shell, shell + 0.2], [core, core + 0.2]) };
}

export const coded = (boards: BoardOfRound['evidence'][]): BoardOfRound[] =>
  boards.map((each, index) => ({ code: `ASH-0${index + 1}`, evidence: each }));

/** Boards of plain wood that all dried as the model expects, about 17 % at the shell and 20 % in the core. */
export const stack = [
  [17.3, 21.2],
  [17.9, 22.0],
  [18.2, 21.6],
  [17.6, 20.9],
  [18.0, 21.4],
  [17.7, 21.8],
].map(([shell, core]) => board({ shell: shell!, core: core! }, null));

/** A board that the meter shows like the others of the stack, entered as elm: so it was judged in the last round too. */
export const enteredAsElm = board(
  { shell: 14.6, core: 17.3 },
  { shell: ELM.shell.shown, core: ELM.core.shown },
  elm,
);
