import { expect, test } from 'vitest';
import { assumedTempIn } from '../../../shared-core/probing/readings/assumed-temp.ts';

// 18, 15, 12 and 8 °C to either side are two standard deviations: common practice, no source.
test('wood of unmeasured temperature is as warm as its air, least surely outdoors', () => {
  const sdOf = (kind: Parameters<typeof assumedTempIn>[0]['kind'], isAirMeasured?: boolean) =>
    assumedTempIn({ kind, airTempC: 12, ...(isAirMeasured === undefined ? {} : { isAirMeasured }) });
  expect(sdOf('outdoors')).toEqual({ tempC: 12, sdK: 9 });
  expect(sdOf('open-shed')).toEqual({ tempC: 12, sdK: 7.5 });
  expect(sdOf('shop')).toEqual({ tempC: 12, sdK: 6 });
  expect(sdOf('heated-room', false)).toEqual({ tempC: 12, sdK: 4 });
  // Air that was measured that day leaves half of it open.
  expect(sdOf('heated-room', true)).toEqual({ tempC: 12, sdK: 2 });
});

test('where the air is not known, nothing is assumed', () => {
  expect(assumedTempIn({ kind: 'shop', airTempC: null })).toBeNull();
  expect(assumedTempIn({ kind: 'shop' })).toBeNull();
});
