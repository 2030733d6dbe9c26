/** No longer one fits. */
const MOST_CODE = 16;
const MOST_NAME = 80;

/**
 * The ID nearest to one that is taken.
 * @example freeCode('OAK-07', (code) => code === 'OAK-07') // 'OAK-07-2'
 */
export const freeCode = (code: string, isTaken: (code: string) => boolean): string =>
  free(code, MOST_CODE, (number) => `-${number}`, isTaken);

/**
 * The name nearest to one that is taken.
 * @example freeName('Shed', (name) => name === 'Shed') // 'Shed (2)'
 */
export const freeName = (name: string, isTaken: (name: string) => boolean): string =>
  free(name, MOST_NAME, (number) => ` (${number})`, isTaken);

function free(
  name: string,
  most: number,
  ending: (number: number) => string,
  isTaken: (name: string) => boolean,
): string {
  let tried = name;
  for (let number = 2; isTaken(tried); number++) {
    tried = name.slice(0, most - ending(number).length) + ending(number);
  }
  return tried;
}
