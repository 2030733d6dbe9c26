import { expect, test } from 'vitest';
import { meterFileOf, readMeterFile } from '../../../shared-core/contract/meter-file.ts';
import type { MeterDescription } from '../../../shared-core/gatt/meter-description.ts';
import { confirmed } from '../../../shared-core/gatt/recognize-meter.ts';
import { unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import { aTestBlock } from './a-test-block.ts';
import { handHeld } from './hand-held-meter.ts';
import { doing, lines, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

const tenths = {
  ...handHeld,
  value: { ...handHeld.value, exponent: -1 },
  origin: 'mapped-by-hand' as const,
};
const profile = { ...unknownProfile, pins: { lengthMm: 19, insulated: true } };

const characteristics = [
  {
    serviceUuid: '181a',
    characteristicUuid: '2a6f',
    canNotify: true,
    canRead: false,
    canWrite: false,
    presentationFormat: null,
    userDescription: null,
    validRange: null,
  },
];

/** The meter in the test's hand, connected, and read again as its row says where that is another way. */
async function connected(): Promise<number> {
  const describe = (description: MeterDescription): void => {
    const described = { description: confirmed(characteristics, description), characteristics, remarks: [] };
    yard.meter.described = described;
    yard.meter.emit('described', described);
  };
  yard.meter.describe = describe;
  yard.meter.recall = describe;
  await yard.command('meter.scan', {});
  const { meterId } = await yard.command('meter.connect', { deviceId: 'hand' });
  return meterId!;
}
const exponentInUse = () => yard.meter.described?.description?.value.exponent;

test('a file that was saved and used again changes nothing, and is saved again as the same', async () => {
  const meterId = await connected();
  const file = await yard.query('meters.file', { meterId });
  expect(readMeterFile(JSON.stringify(file))).toEqual({ ok: true, value: file });
  await yard.command('meters.useFile', { meterId, file });
  expect(await yard.query('meters.file', { meterId })).toEqual(file);
});

test('the connected meter is read by a file at once, and as before once that is undone', async () => {
  const meterId = await connected();
  const { act } = await doing('meters.useFile', { meterId, file: meterFileOf(tenths, profile) });
  expect(exponentInUse()).toBe(-1);
  expect((await yard.query('meters.list', {})).find(({ id }) => id === meterId)?.profile).toEqual(profile);
  expect((await lines())[0]).toBe('Meter file used for Hand-held.');
  await undo(act);
  expect(exponentInUse()).toBe(-2);
});

test('a file of a value that the connected meter does not send is refused, and nothing is changed', async () => {
  const meterId = await connected();
  const before = await yard.query('meters.file', { meterId });
  const other = { ...tenths, source: { ...handHeld.source, characteristicUuid: '2a19' } } as MeterDescription;
  expect(await yard.refusal('meters.useFile', { meterId, file: meterFileOf(other, null) })).toContain(
    'does not send the value',
  );
  const advertised = { ...tenths, source: { kind: 'manufacturer-data', companyId: 0xffff } } as const;
  expect(await yard.refusal('meters.useFile', { meterId, file: meterFileOf(advertised, null) })).toContain(
    'does not send the value',
  );
  expect(await yard.query('meters.file', { meterId })).toEqual(before);
});

test('of a hand meter only what its values mean is taken', async () => {
  const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
  await yard.command('meters.useFile', { meterId, file: meterFileOf(tenths, profile) });
  expect(await yard.query('meters.file', { meterId })).toEqual(meterFileOf(null, profile));
});

test.each([
  [
    'a curve that is known',
    'walnut-black',
    { kind: 'species', speciesId: null, curveId: 'walnut-black', tempC: 21 },
  ],
  ['no curve', null, { kind: 'unknown' }],
])(
  'of a species that only another yard has, with %s, what is known here is used',
  async (_, curveId, scale) => {
    const { meterId } = await yard.command('meters.add', { name: 'Old one', profile: unknownProfile });
    const elsewhere = {
      ...profile,
      scale: { kind: 'species', speciesId: 'own-1', curveId, tempC: 21 },
    } as const;
    const used = await yard.command('meters.useFile', { meterId, file: meterFileOf(null, elsewhere) });
    expect(used.profile).toEqual({ ...profile, scale });
  },
);

test('a meter that sends percent is not set up as one that shows ohms', async () => {
  const meterId = await connected();
  const file = meterFileOf(handHeld, { ...unknownProfile, scale: { kind: 'ohms' } });
  expect(await yard.refusal('meters.useFile', { meterId, file })).toContain('sends %, not ohms');
});

test('what a check found in % is not taken off ohms, which the check says nothing of', async () => {
  const meterId = await connected();
  const { id: blockId } = await yard.command('testBlocks.add', aTestBlock(meterId));
  const { id: checkId } = await yard.command('meterChecks.add', { blockId, shown: 14, tempC: null });
  await yard.command('meterChecks.correct', { checkId });
  const value = { ...handHeld.value, exponent: 4 };
  const inOhms = { ...handHeld, value, unit: 'ohm', range: { min: 0, max: 1e12 } } as const;
  const file = meterFileOf(inOhms, { ...unknownProfile, scale: { kind: 'ohms' } });
  yard.later(60_000);
  await yard.command('meters.useFile', { meterId, file });
  expect(await yard.query('meterChecks.list', {})).toMatchObject([
    { unit: 'ohm', checks: [], toCorrect: null },
  ]);
  expect(await yard.refusal('meterChecks.correct', { checkId })).toContain('in another unit');
  await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 21 });
  for (let sent = 0; sent < 40; sent++) yard.meter.sendRubbish(Uint8Array.of(15_500 & 255, 15_500 >> 8));
  const [reading] = (await yard.query('boards.get', { id: yard.boards[0]!.id })).readings;
  expect(reading).toMatchObject({ raw: 155e6, unit: 'ohm' });
  expect(reading!.corrected.steps.map(({ step }) => step)).not.toContain('meter-check');
});
