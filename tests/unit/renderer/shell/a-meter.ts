import type { MeterState } from '../../../../shared-core/contract/meter.ts';
import type { Live } from '../../../../shared-core/contract/round.ts';
import { plainDescription } from '../../../../shared-core/gatt/meter-description.ts';
import { message } from '../../../../shared-core/words/message.ts';

/** No meter, and what a test makes of it. */
export function aMeter(changes: Partial<MeterState> = {}): MeterState {
  return {
    kind: 'none',
    phase: 'idle',
    message: message('meter.state.none'),
    radio: null,
    canSimulate: false,
    heldBy: 'this-window',
    devices: [],
    deviceId: null,
    deviceName: null,
    meterId: null,
    description: null,
    characteristics: [],
    remarks: [],
    toConfirm: null,
    batteryPct: null,
    speciesSetting: null,
    counts: { received: 0, decoded: 0, noReading: 0, other: 0, refused: 0, lastRefusal: null },
    ...changes,
  };
}

/** A meter of our own invention that sends % as an unsigned 16-bit number of tenths. */
export function aLiveMeter(changes: Partial<MeterState> = {}): MeterState {
  return aMeter({
    kind: 'bluetooth',
    phase: 'live',
    message: message('meter.state.live', { meterName: 'Yard meter' }),
    deviceId: 'aa:bb',
    deviceName: 'Yard meter',
    meterId: 1,
    characteristics: [
      {
        serviceUuid: '181a',
        characteristicUuid: '2a6f',
        canNotify: true,
        canWrite: false,
        userDescription: 'Moisture of wood',
        lastBytesHex: '7e00',
      },
    ],
    description: plainDescription({
      source: { kind: 'sent', serviceUuid: '181a', characteristicUuid: '2a6f' },
      value: { kind: 'number', format: 6, byteOffset: 0, exponent: -1, scale: 1, offset: 0 },
      unit: 'pct',
      range: { min: 5, max: 60 },
      origin: 'self-described',
    }),
    batteryPct: 76,
    counts: {
      received: 1200,
      decoded: 1058,
      noReading: 140,
      other: 0,
      refused: 2,
      lastRefusal: message('meter.value.bytes-missing', { sent: 1, needed: 2 }),
    },
    ...changes,
  });
}

export function aLiveValue(changes: Partial<Live> = {}): Live {
  return {
    raw: 12.6,
    unit: 'pct',
    corrected: {
      mcPct: 13.4,
      steps: [{ step: 'temperature', pct: 13.4 }],
      standardUncertaintyPct: 0.8,
      warnings: [],
    },
    phase: 'settled',
    spread: 0.1,
    tempC: null,
    silentS: null,
    trace: [12.9, 12.7, 12.6],
    ...changes,
  };
}
