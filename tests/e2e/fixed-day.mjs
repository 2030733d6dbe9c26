/** Loaded into a host before anything else: its clock then runs from PINTALLY_TEST_NOW on. */
const { now } = Date;
const ahead = Date.parse(process.env.PINTALLY_TEST_NOW ?? '') - now();

Date.now = () => now() + ahead;
globalThis.Date = new Proxy(Date, {
  construct: (target, given, made) =>
    Reflect.construct(target, given.length === 0 ? [Date.now()] : given, made),
});
