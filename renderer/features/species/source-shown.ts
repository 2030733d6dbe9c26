/** A source without its marks: what is from memory is listed with the methods, not on a working screen. */
export const sourceShown = (source: string): string => source.replaceAll(/ \(from memory\)/g, '');
