import { MOST_DEVICES } from '../heard-devices.ts';

/**
 * What noble remembers of devices by their id, and by their address while it listens. It never forgets any: 66,000
 * made-up ones took 297 MB. Its bindings for Windows and macOS have fewer of these.
 */
export interface NobleMemory {
  _peripherals?: Record<string, unknown>;
  _services?: Record<string, unknown>;
  _characteristics?: Record<string, unknown>;
  _descriptors?: Record<string, unknown>;
  _discoveredPeripheralUUids?: Record<string, unknown>;
  _bindings?: {
    _addresses?: Record<string, unknown>;
    _addresseTypes?: Record<string, unknown>;
    _connectable?: Record<string, unknown>;
    scannable?: Record<string, unknown>;
    _gap?: { _discoveries?: Record<string, unknown> };
  };
}

const idOf = (key: string): string => key.replaceAll(':', '');

/** Makes noble forget the devices that are not kept, once they are many. */
export function trimNoble(noble: NobleMemory, isKept: (id: string) => boolean): void {
  const { _bindings: bindings } = noble;
  const memories = [
    noble._peripherals,
    noble._services,
    noble._characteristics,
    noble._descriptors,
    noble._discoveredPeripheralUUids,
    bindings?._addresses,
    bindings?._addresseTypes,
    bindings?._connectable,
    bindings?.scannable,
    bindings?._gap?._discoveries,
  ];
  for (const memory of memories) {
    if (memory === undefined) continue;
    const keys = Object.keys(memory);
    if (keys.length <= 2 * MOST_DEVICES) continue;
    for (const key of keys) if (!isKept(idOf(key))) delete memory[key];
  }
}
