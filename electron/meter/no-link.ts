import { message } from '../../shared-core/words/message.ts';
import { MeterLink } from './meter-link.ts';

/** No meter at all: readings are typed. It answers every order by saying so. */
export class NoLink extends MeterLink {
  override readonly kind = 'none';

  override startScan(): void {
    this.#say();
  }
  override stopScan(): void {}
  override connect(): void {
    this.#say();
  }
  override describe(): void {}
  override async disconnect(): Promise<void> {}
  override async close(): Promise<void> {}

  #say(): void {
    this.setState('idle', message('meter.state.typed-only'), {
      deviceId: null,
      deviceName: null,
    });
  }
}
