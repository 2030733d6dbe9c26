import { describe, expect, test } from 'vitest';
import { adapterState, reasonOfError, reasonOfState } from '../../../electron/meter/adapter-reason.ts';
import { adapterReasonSchema } from '../../../electron/meter/radio-messages.ts';
import { type RadioWay, radioWaySchema } from '../../../shared-core/contract/radio-way.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

describe('noble’s word for the adapter', () => {
  test.each([
    ['poweredOn', 1, 'on'],
    ['poweredOn', null, 'on'],
    ['poweredOff', 1, 'off'],
    ['poweredOff', 0, 'no-adapter'],
    // macOS and Windows keep no list that can be read.
    ['poweredOff', null, 'off'],
    ['unauthorized', 1, 'refused'],
    ['unsupported', 1, 'unsupported'],
    ['unsupported', 0, 'no-adapter'],
    ['unknown', 1, 'starting'],
    ['resetting', 1, 'starting'],
  ])('%s with %s adapters listed is %s', (state, adapters, reason) => {
    expect(reasonOfState(state, adapters)).toBe(reason);
  });
});

describe('errors of loading noble and opening the adapter', () => {
  // The first two were seen on this project's machine; the others are Node's and Linux' own wordings, from memory.
  test.each([
    ['EAFNOSUPPORT, Address family not supported by protocol', 'no-adapter'],
    ['was compiled against a different Node.js version using NODE_MODULE_VERSION 115', 'module-missing'],
    ["Cannot find module '@abandonware/noble'", 'module-missing'],
    ['No native build was found for platform=linux arch=x64', 'module-missing'],
    ['Initialization of USB device failed: ENODEV, No such device', 'no-adapter'],
    ['EPERM, Operation not permitted', 'refused'],
    ['bind EACCES', 'refused'],
    ['something else', 'no-answer'],
  ])('%s is %s', (message, reason) => {
    expect(reasonOfError(message)).toBe(reason);
  });
});

const { say } = createWords({
  catalog: english,
  locale: 'en-US',
  timeZone: 'America/Chicago',
  units: 'imperial',
  today: null,
});

test('every adapter state is whole sentences, and every trouble ends with what still works', () => {
  for (const reason of adapterReasonSchema.options) {
    for (const way of [null, ...radioWaySchema.options]) {
      const { usable, message } = adapterState(reason, way);
      const sentence = say(message);
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(usable).toBe(reason === 'on');
      if (!usable && reason !== 'starting') expect(sentence).toMatch(/ Typed readings work without it\.$/);
    }
  }
});

test('where Bluetooth is not allowed, the sentence says what to do on this system', () => {
  const refused = (way: RadioWay) => say(adapterState('refused', way).message);
  expect(refused('bluez')).toContain('sudo usermod -aG bluetooth $USER.');
  expect(refused('hci-beside-bluez')).toBe(refused('bluez'));
  expect(refused('hci')).toContain('sudo systemctl enable --now bluetooth.');
  expect(refused('macos')).toContain('System Settings, Privacy & Security, Bluetooth.');
  expect(refused('windows')).toContain('Settings, Privacy & security, Radios,');
});
