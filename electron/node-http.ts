/**
 * Node's HTTP. Imported as a module, it would load Node's client for the web (`fetch`) as well, which takes a tenth of
 * a second of every start.
 */
export const http = process.getBuiltinModule('node:http');
