import { MeterLink } from '../../../electron/meter/meter-link.ts';
import { type MeterDescription, plainDescription } from '../../../shared-core/gatt/meter-description.ts';
import { fromOf } from '../../../shared-core/gatt/source.ts';
import { message } from '../../../shared-core/words/message.ts';

/** A meter that shows whatever the test says, when it says so: uint16 in hundredths of a percent. */
export class HandHeldMeter extends MeterLink {
  readonly kind = 'bluetooth';
  private atMs = Date.parse('2026-06-01T08:00:00.000Z');

  override startScan(): void {
    this.setState('scanning', message('meter.state.looking'), { deviceId: null, deviceName: null });
    this.emit('found', { deviceId: 'hand', name: 'Hand-held', rssiDbm: -50, serviceUuids: [] });
  }
  override stopScan(): void {}
  override connect(deviceId: string): void {
    this.setState('live', message('meter.state.live', { meterName: 'Hand-held' }), {
      deviceId,
      deviceName: 'Hand-held',
    });
    this.describe(handHeld);
  }
  /** No radio can look for it. */
  failToSearch(): void {
    this.setState('failed', message('meter.adapter.stopped'), { deviceId: null, deviceName: null });
  }
  beConnecting(): void {
    const hand = { deviceId: 'hand', deviceName: 'Hand-held' };
    this.setState('connecting', message('meter.state.connecting', { meterName: 'Hand-held' }), hand);
  }
  /** Live, but sends nothing for so long. */
  beSilent(seconds: number): void {
    this.atMs += seconds * 1000;
  }
  /** Out of reach for so long, and back. */
  leaveReach(seconds: number): void {
    const device = { deviceId: 'hand', deviceName: 'Hand-held' };
    const meterName = 'Hand-held';
    this.setState(
      'reconnecting',
      message('meter.state.lost', { meterName, why: message('meter.why.dropped') }),
      device,
    );
    this.atMs += seconds * 1000;
    this.setState('live', message('meter.state.live', { meterName }), device);
  }
  override describe(described: MeterDescription): void {
    this.setDescribed({ description: described, characteristics: [], remarks: [] });
  }
  /** It says how it is read. */
  override recall(known: MeterDescription | null): void {
    this.describe(known ?? handHeld);
  }
  /** Nobody knows how it is read. */
  beUnknown(): void {
    const hand = { deviceId: 'hand', deviceName: 'Hand-held' };
    this.setState('needs-description', message('meter.state.needs-setup', { meterName: 'Hand-held' }), hand);
  }
  override async disconnect(): Promise<void> {
    this.setState('idle', message('meter.state.none'), { deviceId: null, deviceName: null });
  }
  override async close(): Promise<void> {}

  private send(bytes: Uint8Array): void {
    this.atMs += 100;
    this.receive({
      from: fromOf(handHeld.source),
      bytes,
      receivedAtMs: this.atMs,
    });
  }
  /** Ten values a second for so many seconds. */
  show(pct: number, seconds: number): void {
    for (let n = 0; n < seconds * 10; n++) this.send(Uint8Array.of((pct * 100) & 0xff, (pct * 100) >> 8));
  }
  /** Pins lifted: the meter shows nothing readable for a second. */
  lift(): void {
    for (let n = 0; n < 10; n++) this.send(Uint8Array.of(0, 0));
  }
  sendRubbish(bytes: Uint8Array): void {
    this.send(bytes);
  }
}

export const handHeld = plainDescription({
  source: { kind: 'sent', serviceUuid: '181a', characteristicUuid: '2a6f' },
  value: { kind: 'number', format: 6, byteOffset: 0, exponent: -2, scale: 1, offset: 0 },
  unit: 'pct',
  range: { min: 4, max: 60 },
  origin: 'self-described',
});
