export { canClosing } from './can-closing.ts';
export { canWall } from './can-wall.ts';
export { fitBolts } from './fit-bolts.ts';
export { fitCan } from './fit-can.ts';
export { fitSprue } from './fit-sprue.ts';
export { pack } from './pack.ts';
export { rubberBlanks } from './rubber-blanks.ts';
export { rubberLedger } from './rubber-ledger.ts';
