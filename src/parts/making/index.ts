export { asSolid, onBed, type SolidNaming } from './as-solid.ts';
export { type FlatFixture, flatFixture, holeFit, openingFit } from './fit.ts';
export { fromOuterFace, type HalfName, halfNames, halfToPrint } from './half-frame.ts';
export {
  type Labeled,
  type LabelRoom,
  labelCutter,
  labelDepth,
  labelFindings,
  labelStroke,
  layLabel,
  leastLetters,
  lettersReplaced,
  roomInRound,
  strokeOutlines,
  waysToLay,
  wordsLeftOff,
} from './label.ts';
