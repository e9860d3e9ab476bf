import fc from 'fast-check';

// The same input everywhere, so that what passed on one machine fails on no other. `npm run laws` draws other seeds.
const seed = Number(process.env.LAWS_SEED ?? 20051);
if (!Number.isInteger(seed)) throw new RangeError(`LAWS_SEED is "${process.env.LAWS_SEED}". Give a whole number.`);
fc.configureGlobal({ seed });
