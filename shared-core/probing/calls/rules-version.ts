/**
 * Version of everything in `probing/` that turns readings into flags, estimates and calls. A cached result that
 * carries another version must be made again. Raise it whenever one of those could come out differently.
 */
export const RULES_VERSION = 69;
