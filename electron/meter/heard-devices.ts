/** How many devices are remembered at once: more than are within reach, and few enough to list. */
export const MOST_DEVICES = 200;
/** Devices heard within so long of each other were heard at the same time, ms. */
const SAME_TIME_MS = 10_000;

export interface Heard {
  /** Signal strength; null where the adapter does not report it. */
  rssiDbm: number | null;
  /** By a clock that only runs forward, ms. */
  atMs: number;
}

/**
 * Devices heard on the air, by id. Any program nearby can make up as many as it likes, so those not heard for longest
 * are forgotten first, and among those heard at the same time the weakest.
 *
 * @param isKept  a device that is never forgotten: one that the person uses
 */
export class HeardDevices<T extends Heard> {
  readonly #devices = new Map<string, T>();
  readonly #isKept: (id: string, device: T) => boolean;

  constructor(isKept: (id: string, device: T) => boolean = () => false) {
    this.#isKept = isKept;
  }

  get(id: string): T | undefined {
    return this.#devices.get(id);
  }

  has(id: string): boolean {
    return this.#devices.has(id);
  }

  get size(): number {
    return this.#devices.size;
  }

  all(): T[] {
    return [...this.#devices.values()];
  }

  clear(): void {
    this.#devices.clear();
  }

  hear(id: string, device: T): void {
    this.#devices.set(id, device);
    if (this.#devices.size > MOST_DEVICES) this.#forgetOne(device.atMs);
  }

  #forgetOne(nowMs: number): void {
    let worst: [string, T] | null = null;
    const age = ({ atMs }: T) => Math.floor((nowMs - atMs) / SAME_TIME_MS);
    const strength = ({ rssiDbm }: T) => rssiDbm ?? Number.NEGATIVE_INFINITY;
    for (const each of this.#devices) {
      const [id, device] = each;
      const isWorse =
        worst === null ||
        age(device) > age(worst[1]) ||
        (age(device) === age(worst[1]) && strength(device) < strength(worst[1]));
      if (isWorse && !this.#isKept(id, device)) worst = each;
    }
    if (worst !== null) this.#devices.delete(worst[0]);
  }
}
