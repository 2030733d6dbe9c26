import { message } from '../../shared-core/words/message.ts';
import { MeterLink } from './meter-link.ts';

/** No meter at all: readings are typed. Every order is answered with that state. */
export class NoLink extends MeterLink {
  override readonly kind = 'none';

  override startScan(): void {
    this.#showTypedOnly();
  }
  override stopScan(): void {}
  override connect(): void {
    this.#showTypedOnly();
  }
  override describe(): void {}
  override async disconnect(): Promise<void> {}
  override async close(): Promise<void> {}

  #showTypedOnly(): void {
    this.setState('idle', message('meter.state.typed-only'), {
      deviceId: null,
      deviceName: null,
    });
  }
}
