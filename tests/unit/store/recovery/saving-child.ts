/**
 * A process that saves readings to a yard file until it is killed: `saving-child.ts FILE READINGS MERGED`. The first MERGED
 * readings are checkpointed into the file, the rest are in its log only. Prints `saved` once all are on disk.
 */
import { openYard } from '../../../../electron/store/yard.ts';
import { newBoardSchema, unknownOfBoard } from '../../../../shared-core/contract/yard.ts';
import { builtInEndUses, builtInSpecies } from '../../../../shared-core/wood/species/built-in.ts';

const [file = '', readings = '0', merged = '0'] = process.argv.slice(2);
const yard = openYard(file);
yard.transaction(() => {
  yard.species.bringUpToDate(builtInSpecies);
  yard.endUses.bringUpToDate(builtInEndUses);
  const placeId = yard.places.add({
    name: 'Shed',
    kind: 'open-shed',
    air: Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.65 })),
    airSource: null,
    airMovement: null,
  });
  for (let stack = 1; stack <= 3; stack++) {
    const stackId = yard.stacks.add({
      name: `Stack ${stack}`,
      placeId,
      endUseId: builtInEndUses[0]!.id,
      topCover: 'covered',
      note: '',
    });
    for (let board = 1; board <= 20; board++) {
      yard.boards.add(
        newBoardSchema.parse({
          ...unknownOfBoard,
          code: `S${stack}-${board}`,
          stackId,
          speciesId: builtInSpecies[0]!.id,
          thicknessMm: 27,
          // Every tenth has a note longer than a page: 3 bytes a character.
          note: board % 10 === 0 ? '–'.repeat(1900) : '',
        }),
        placeId,
        '2026-01-01T00:00:00.000Z',
      );
    }
    yard.rounds.add({ stackId, startedAt: `2026-02-0${stack}T10:00:00.000Z`, datedBy: 'clock' });
  }
});
for (let n = 0; n < Number(readings); n++) {
  if (n === Number(merged)) yard.checkpoint();
  const stack = n % 3;
  yard.readings.save({
    roundId: stack + 1,
    boardId: stack * 20 + 1 + (Math.floor(n / 3) % 20),
    spotIndex: Math.floor(n / 60),
    spot: { depth: 'shell', depthMm: 3, fromEndMm: 800, face: 'face' },
    raw: 8 + n / 100,
    unit: 'pct',
    how: 'typed',
    settled: null,
    woodTempC: 12,
    meterId: null,
    takenAt: `2026-02-0${stack + 1}T10:05:00.000Z`,
  });
}
process.stdout.write('saved\n');
setInterval(() => undefined, 1000);
