/**
 * Stands in for the radio process in `bluetooth-link.test.ts`, for what the emulated radio cannot be made to do. The
 * scenario named by FAKE_RADIO says what it answers.
 */
import type { FromRadio, ToRadio } from '../../../electron/meter/radio-messages.ts';

const service = '7d0a1f00b2c94a6e8f5317c2a4e9d010';
const value = '7d0a1f01b2c94a6e8f5317c2a4e9d010';
const send = (message: FromRadio) => process.send!(message);
const scenario = process.env.FAKE_RADIO;

const found = () =>
  send({
    type: 'found',
    devices: [{ deviceId: 'aabbccddeeff', name: 'Fake', rssiDbm: null, serviceUuids: [service] }],
  });
const notifications = (attempt: number, values: number[][], overrun = 0) =>
  send({
    type: 'notifications',
    attempt,
    items: values.map((bytes) => ({
      from: { kind: 'characteristic', serviceUuid: service, characteristicUuid: value },
      receivedAtMs: 1,
      bytes: Uint8Array.from(bytes),
      lengthBytes: bytes.length,
    })),
    overrun,
  });

if (scenario === 'off-then-on') {
  send({ type: 'adapter', reason: 'off', way: 'bluez' });
  setTimeout(() => send({ type: 'adapter', reason: 'on', way: 'bluez' }), 300);
} else {
  send({ type: 'adapter', reason: 'on', way: 'bluez' });
}

process.on('message', (order: ToRadio) => {
  switch (order.type) {
    case 'scan':
      if (scenario === 'garbage') {
        process.send!('not a message');
        process.send!({ type: 'found', devices: [{ deviceId: 7 }] });
        process.send!({ type: 'notifications', attempt: 1, items: [{ bytes: 'zz' }], overrun: -1 });
      }
      found();
      return;
    case 'connect':
      send({ type: 'connected', attempt: order.attempt, name: 'Fake' });
      send({
        type: 'discovered',
        attempt: order.attempt,
        characteristics: [
          {
            serviceUuid: service,
            characteristicUuid: value,
            canNotify: true,
            canRead: false,
            canWrite: false,
            presentationFormat: Uint8Array.of(0x06, 0xfe, 0xad, 0x27, 1, 0, 0),
            userDescription: 'Moisture content',
            validRange: null,
          },
        ],
      });
      return;
    case 'watch':
      send({ type: 'watching', attempt: order.attempt });
      notifications(order.attempt - 1, [[0x01, 0x00]]);
      notifications(
        order.attempt,
        [
          [0xec, 0x04],
          [0xed, 0x04],
        ],
        5,
      );
      notifications(order.attempt, [[0xee, 0x04]]);
      return;
    case 'disconnect':
      send({ type: 'disconnected', attempt: order.attempt });
      return;
    case 'quit':
      process.exit(0);
  }
});
