import { describe, expect, test } from 'vitest';
import { find, untilPhase } from './link-watch.ts';
import { link, liveMeter, meter, newLink, radio, withMeterInReach } from './meter-in-reach.ts';

withMeterInReach();

const failedBecause = (code: string) => ({
  code: 'meter.state.failed',
  facts: { meterName: meter.name, why: { code } },
});

describe('a meter that went silent', () => {
  test('never heard: the attempt ends with the reason, and a later one works', async () => {
    const { deviceId } = await find(newLink(), meter.name);
    meter.tell({ type: 'advertise', on: false });
    // Longer than "heard just now", with room for a slow machine.
    await new Promise((resolve) => setTimeout(resolve, 5000));
    link.connect(deviceId, null);
    expect((await untilPhase(link, 'failed')).message).toEqual(failedBecause('meter.why.not-found'));
    meter.tell({ type: 'advertise', on: true });
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
  });

  // What users of the library report: such a connect never returns and blocks all later ones.
  test('heard but never connecting: the radio starts again, and a later connect works', async () => {
    const { deviceId } = await find(newLink(), meter.name);
    const hung = link.radioPid!;
    radio.setAdapter({ connecting: 'hold' });
    link.connect(deviceId, null);
    expect((await untilPhase(link, 'failed')).message).toEqual(failedBecause('meter.why.no-answer'));
    radio.setAdapter({});
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
    expect(link.radioPid).not.toBe(hung);
    expect(() => process.kill(hung, 0)).toThrow('ESRCH');
  });

  test('connected but answering nothing: the same', async () => {
    const { deviceId } = await find(newLink(), meter.name);
    meter.freeze();
    link.connect(deviceId, null);
    expect((await untilPhase(link, 'failed')).message).toEqual(failedBecause('meter.why.no-answer'));
    meter.wake();
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
  });

  test('silent while live: no bytes and no answer are believed, whatever the library says', async () => {
    await liveMeter();
    meter.freeze();
    const why = { code: 'meter.why.stopped-answering' };
    const trouble = { code: 'meter.state.lost', facts: { meterName: meter.name, why } };
    expect((await untilPhase(link, 'reconnecting')).message.facts).toEqual({ trouble });
    meter.wake();
    await untilPhase(link, 'live');
  });

  test('one that has nothing to send but answers stays connected', async () => {
    await liveMeter();
    const phases: string[] = [];
    link.on('state', ({ phase }) => phases.push(phase));
    meter.tell({ type: 'rate', hz: 0 });
    await new Promise((resolve) => setTimeout(resolve, 4000));
    expect(phases).toEqual([]);
    expect(meter.links).toBe(1);
  });

  test('a person can give up in the middle of an attempt', async () => {
    const { deviceId } = await find(newLink(), meter.name);
    radio.setAdapter({ connecting: 'hold' });
    link.connect(deviceId, null);
    await untilPhase(link, 'connecting');
    await link.disconnect();
    expect(link.state.phase).toBe('idle');
    radio.setAdapter({});
    link.connect(deviceId, null);
    await untilPhase(link, 'live');
  });
});
