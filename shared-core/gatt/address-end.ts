const CHARACTERS = 4;

/** The end of a device's address: it tells two of one name apart, and can be read out. */
export const withAddressEnd = (name: string, deviceId: string): string =>
  `${name} ${deviceId.replaceAll(':', '').slice(-CHARACTERS)}`;
