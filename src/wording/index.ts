export { fixed, showQuantity } from './quantity.ts';
export { type Sentences, sayFinding } from './sentence.ts';
