export { canClosing } from './can-closing.ts';
export { clearOfBolts } from './fit-bolts.ts';
export { discInCan } from './fit-can.ts';
export { sprueInHole } from './fit-sprue.ts';
export { pack } from './pack.ts';
export { rubberLedger } from './rubber-ledger.ts';
