import { ourChoice, published, type RowSource, type Sourced } from './source.ts';

/** What a way of making fixtures asks of their shape. Lengths mm, the angle in degrees from upright. */
export interface MakingProcess {
  readonly name: 'FDM' | 'SLA' | 'machined';
  /** Gap on each side of a joint that is pushed together by hand. */
  readonly clearance: Sourced;
  /** How much narrower across a round hole comes out than it is drawn. */
  readonly holeLoss: Sourced;
  /** Chamfer that the spread of the first layers stays within; 0 where nothing is built up in layers. */
  readonly footChamfer: Sourced;
  /** Thinnest wall or rib that comes out whole. */
  readonly leastFeature: Sourced;
  /** Least lean from upright, degrees, of a wall that must come off its counterpart straight. */
  readonly draftDeg: Sourced;
  /** Steepest overhang that needs nothing under it; none where nothing is built up in layers. */
  readonly overhangDeg?: Sourced;
}

const practice: RowSource = ourChoice('common practice');

export const makingProcesses: readonly MakingProcess[] = [
  {
    name: 'FDM',
    clearance: {
      value: 0.25,
      source: published('printed fits, sliding, 0.2 to 0.3 mm a side: printparams.com'),
    },
    holeLoss: { value: 0.2, source: practice },
    footChamfer: { value: 0.4, source: practice },
    leastFeature: { value: 0.8, source: practice },
    draftDeg: { value: 2, source: practice },
    overhangDeg: { value: 45, source: practice },
  },
  {
    name: 'SLA',
    clearance: {
      value: 0.125,
      source: published('0.25 mm between two resin parts: help.makelab.com'),
    },
    holeLoss: { value: 0.1, source: practice },
    footChamfer: { value: 0.3, source: practice },
    leastFeature: { value: 0.4, source: practice },
    draftDeg: { value: 1, source: practice },
    overhangDeg: { value: 60, source: practice },
  },
  {
    name: 'machined',
    clearance: { value: 0.05, source: practice },
    holeLoss: { value: 0, source: practice },
    footChamfer: { value: 0, source: practice },
    leastFeature: { value: 0.5, source: practice },
    draftDeg: { value: 1, source: practice },
  },
];

export const makingProcess = (name: MakingProcess['name']): MakingProcess => {
  const row = makingProcesses.find((one) => one.name === name);
  if (!row) throw new RangeError(`makingProcess: no process ${name}`);
  return row;
};
