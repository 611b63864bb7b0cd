export { judgePrintable } from './printable.ts';
export { scaledMaster } from './scaled-master.ts';
export { splitToBed } from './split-to-bed.ts';
