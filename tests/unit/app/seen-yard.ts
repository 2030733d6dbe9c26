import type { CommandName, RequestInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { say } from './a-window.ts';
import { yard } from './yard-of-two.ts';

/** Does something, and gives its act beside what it came to. */
export async function doing<N extends CommandName>(name: N, input: RequestInput<N>) {
  const act = crypto.randomUUID();
  const output: RequestOutput<N> = await yard.command(name, input, act);
  yard.later(60_000);
  return { act, output };
}
export const undo = (act: string) => yard.command('acts.undo', { act });
/** What was done in the yard, or to a board, as a person reads it, the newest first. */
export const lines = async (boardId: number | null = null): Promise<string[]> =>
  (await yard.query('acts.list', { boardId, before: null, limit: 50 })).acts.map(({ line }) => say(line));
export const redo = (act: string) => yard.command('acts.redo', { act });

/** What a person sees of the yard, but for the counts of edits. */
export async function seen() {
  const unversioned = <T extends { version: number }>(rows: readonly T[]) =>
    rows.map(({ version, ...row }) => row);
  const { rows: boards } = await yard.query('boards.list', {
    stackId: null,
    search: '',
    offset: 0,
    limit: 500,
  });
  const details = await Promise.all(
    boards.map(async ({ id }) => {
      const { moves, readings, isSpeciesConfirmed } = await yard.query('boards.get', { id });
      return {
        moves: unversioned(moves),
        isSpeciesConfirmed,
        readings: readings.map(({ id, raw, spot, woodTempC, excluded, meterId, meterProfileId }) => ({
          id,
          raw,
          spot,
          woodTempC,
          excluded,
          meterId,
          meterProfileId,
        })),
        pictures: unversioned(await yard.query('pictures.list', { subject: { kind: 'board', id } })),
        samples: await yard.query('samples.get', { boardId: id }),
        rounds: (await yard.query('rounds.ofBoard', { boardId: id })).map(({ id, startedAt }) => ({
          id,
          startedAt,
        })),
      };
    }),
  );
  const stacks = await yard.query('stacks.list', {});
  const roundIds = stacks.flatMap(({ openRoundId, lastRoundId }) =>
    [openRoundId ?? [], lastRoundId ?? []].flat(),
  );
  const rounds = await Promise.all(
    roundIds.map(async (roundId) => {
      const round = await yard.query('rounds.get', { roundId });
      return {
        startedAt: round.startedAt,
        finishedAt: round.finishedAt,
        woodTempC: round.woodTempC,
        usualCoreWay: round.usualCoreWay,
        boards: round.boards.map(({ boardId, isRead, planBasis, ownTemp }) => ({
          boardId,
          isRead,
          planBasis,
          ownTemp,
        })),
      };
    }),
  );
  return {
    boards: boards.map(({ version, latest, outlook, judgement, ...board }) => board),
    details,
    rounds,
    stacks: stacks.map(
      ({ id, name, placeId, endUseId, topCover, note, boards, openRoundId, lastRoundId }) => ({
        id,
        name,
        placeId,
        endUseId,
        topCover,
        note,
        boards,
        openRoundId,
        lastRoundId,
      }),
    ),
    places: (await yard.query('places.list', {})).map(({ id, name, kind, air }) => ({
      id,
      name,
      kind,
      air,
    })),
    sensors: unversioned(await yard.query('sensors.list', {})),
    air: await Promise.all(
      (await yard.query('places.list', {})).map(({ id: placeId }) => yard.query('air.ofPlace', { placeId })),
    ),
    closed: {
      stacks: unversioned(await yard.query('stacks.closed', {})),
      places: unversioned(await yard.query('places.closed', {})),
    },
    species: unversioned(await yard.query('species.list', {})),
    endUses: unversioned(await yard.query('endUses.list', {})),
    meterToConfirm: (await yard.query('meter.state', {})).toConfirm,
    meterRead: (await yard.query('meter.state', {})).description,
    closedMeters: unversioned(await yard.query('meters.closed', {})),
    meters: unversioned(await yard.query('meters.list', {})),
    tested: unversioned(
      (await yard.query('meterChecks.list', {})).map(({ block, ...more }) => ({ ...more, ...block })),
    ),
    planned: (await yard.query('dates.list', {})).dates.flatMap((date) =>
      date.kind === 'move' ? [{ ...date, move: { ...date.move, version: 0 } }] : [],
    ),
    projects: unversioned(await yard.query('projects.list', {})).map(({ boards, ...projectOf }) => ({
      ...projectOf,
      boards: boards.map(({ boardId }) => boardId),
    })),
    settings: await yard.query('settings.get', {}),
    checks: await yard.query('ovenChecks.ofSpecies', { speciesId: 'walnut-black' }),
    labels: (await yard.query('labels.boards', { stackId: null, search: '' })).boards.map(
      // Whether it is still right follows from the call, which is judged in the background.
      ({ id, label }) => ({ id, isPrinted: label !== 'none' }),
    ),
  };
}
