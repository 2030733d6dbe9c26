/** Meters, connected or typed. */
export const meter = {
  'meter.typed': 'Typed readings',
  'meter.refused': 'The meter refused the connection.',
} as const;
