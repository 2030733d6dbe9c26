import { expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

test('a meter that waits to be described: the window that holds it gets every packet, with its time', async () => {
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  yard.meter.show(13.4, 1);
  yard.meter.beUnknown();
  yard.meter.sendRubbish(Uint8Array.of(1, 2));
  yard.meter.sendRubbish(Uint8Array.of(3));
  await expect.poll(() => yard.heard('meter.packets').length).toBeGreaterThan(0);
  const told = yard.heard('meter.packets');
  expect(told).toHaveLength(1);
  const { packets } = told[0]!;
  expect(packets.map(({ bytesHex }) => bytesHex)).toEqual(['0102', '03']);
  expect(packets[1]!.atMs - packets[0]!.atMs).toBe(100);
});
