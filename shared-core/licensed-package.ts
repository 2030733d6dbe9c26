/** A package of others that Pintally contains, with its license. */
export interface LicensedPackage {
  name: string;
  version: string;
  /** By SPDX, as "MIT"; null where only its text says what it is. */
  license: string | null;
  /** The license itself. */
  text: string;
  /** Whether the text came with the package; else it is the standard one. */
  isTextOwn: boolean;
}
