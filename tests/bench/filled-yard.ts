import { openYard } from '../../electron/store/yard.ts';
import { newBoardSchema, unknownOfBoard } from '../../shared-core/contract/yard.ts';
import { RULES_VERSION } from '../../shared-core/probing/calls/rules-version.ts';
import type { MeterProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { PAIRS } from '../../shared-core/probing/readings/plan-basis.ts';
import { planSpots } from '../../shared-core/probing/readings/spots.ts';
import { builtInEndUses, builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { message } from '../../shared-core/words/message.ts';
import { copyStacks } from './copied-stacks.ts';

export const BOARDS = 100_000;
export const BOARDS_A_STACK = 1000;

const startOf = (round: number): string => `2026-0${round + 1}-01T08:00:00.000Z`;

/**
 * Fills a new yard file with boards, each judged, in stacks of 1,000. The app writes the first stack of each place; the
 * others are copies of these: 100,000 boards with 2,000,000 readings take a core 30 s, one at a time some minutes.
 *
 * @param places  that the stacks are spread over
 * @param meter   that all readings are typed from
 * @param rounds  a month each, of four readings a board; the call is that of the last
 */
export function fillYard(
  file: string,
  boards = BOARDS,
  places = 1,
  meter: { name: string; profile: MeterProfile } | null = null,
  rounds = 2,
): void {
  const stacks = Math.ceil(boards / BOARDS_A_STACK);
  const yard = openYard(file);
  yard.species.bringUpToDate(builtInSpecies);
  yard.endUses.bringUpToDate(builtInEndUses);
  yard.transaction(() => {
    const air = Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 }));
    const placeIds = Array.from({ length: places }, (_, index) =>
      yard.places.add({
        name: index === 0 ? 'Yard' : `Yard ${index + 1}`,
        kind: 'outdoors',
        air,
        airSource: null,
        airMovement: null,
      }),
    );
    const meterId = meter && yard.meters.addTyped(meter.name, meter.profile, '2026-01-01T00:00:00.000Z');
    const { plan } = planSpots({ lengthMm: 2400, thicknessMm: 27, planBasis: PAIRS });
    for (let stack = 0; stack < Math.min(places, stacks); stack++) {
      const placeId = placeIds[stack % places]!;
      const stackId = yard.stacks.add({
        name: `Stack ${stack}`,
        placeId,
        endUseId: 'furniture',
        topCover: 'covered',
        note: '',
      });
      const roundIds = Array.from({ length: rounds }, (_, index) =>
        yard.rounds.add({ stackId, startedAt: startOf(index), datedBy: 'clock' }),
      );
      for (let n = 0; n < BOARDS_A_STACK; n++) {
        const boardId = yard.boards.add(
          newBoardSchema.parse({
            code: `B${String(stack).padStart(2, '0')}-${String(n).padStart(4, '0')}`,
            stackId,
            speciesId: 'walnut-black',
            thicknessMm: 27,
            ...unknownOfBoard,
            widthMm: 200,
            lengthMm: 2400,
            sawing: 'flat',
          }),
          placeId,
          '2026-01-01T00:00:00.000Z',
        );
        for (const [index, roundId] of roundIds.entries()) {
          const at = startOf(index);
          for (const [spotIndex, { spot }] of plan.entries()) {
            yard.readings.save({
              roundId,
              boardId,
              spotIndex,
              spot,
              raw: 12 + (n % 40) / 10,
              unit: 'pct',
              how: 'typed',
              settled: null,
              woodTempC: 12,
              meterId,
              takenAt: at,
            });
          }
          const finding = {
            roundId,
            at,
            averagePct: 12 + (n % 40) / 20,
            averageIs: 'read' as const,
            lowPct: 12,
            highPct: 14,
            shellPct: 12,
            corePct: 14,
            isQuestionable: false,
            spotsRead: null,
            call: 'keep-drying' as const,
            reason: message('call.no-readings'),
            openSpot: null,
            filledSpots: 4,
            spotPcts: [7, 7.4, 7, 7.4],
          };
          yard.findings.put(boardId, finding, RULES_VERSION);
          yard.rounds.finish(roundId, at);
        }
      }
      for (const roundId of roundIds) {
        yard.comparisons.begin(roundId);
        yard.comparisons.settle(roundId, RULES_VERSION);
      }
    }
  });
  yard.close();
  if (stacks > places) copyStacks(file, places, stacks);
}
