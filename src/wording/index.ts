export { type CauseSentences, sayCause } from './cause.ts';
export { columnNumber, columnUnit } from './column.ts';
export { counted } from './counted.ts';
export { fixed, placeText, showBox, showFigure, showQuantity, showSides, showSize } from './quantity.ts';
export { runs } from './runs.ts';
export { type Sentences, sayFinding, saysOfAll } from './sentence.ts';
export { tally } from './tally.ts';
