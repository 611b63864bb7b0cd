import { type Finding, finding } from '../../findings/index.ts';
import type { Scope } from '../../kernel/index.ts';
import {
  type LooseComponent,
  type Mold,
  makeAlways,
  type Part,
  type PartOutput,
  type Tools,
  task,
} from '../../mold/index.ts';
import { asSolid, halfNames, halfToPrint } from '../making/index.ts';
import { cutHalves, type HalvesInput } from './cut-halves.ts';
import { labelCorners, markFindings } from './plain-disc.ts';

/**
 * Both halves: discs with their cavities, sprue opening, gates and vents, boss pockets and sockets, tab recess and
 * notch, trimmed by the one parting surface. Printed on the outer face, parting face up.
 */
export const halves: Part = task({
  id: 'halves',
  title: 'mold halves',
  processes: ['rubber', 'rigid', 'poured'],
  units: (mold) => [{ subject: 'mold', about: [], input: halvesInput(mold) }],
  run: (input, tools) => {
    const made = halfSolids(input, tools);
    return {
      ...made,
      findings: [...made.findings, ...halfNames.flatMap((half) => markFindings(half, input))],
    };
  },
});

/** Both halves as solids, lower first; made once for all tasks that look at them. */
export function halfSolids(input: HalvesInput, { kernel, memoize = makeAlways }: Tools): PartOutput {
  return memoize('mold halves', input, () => kernel.scope((scope) => makeHalfSolids(scope, input)));
}

function makeHalfSolids(scope: Scope, input: HalvesInput): PartOutput {
  const bodies = cutHalves(scope, input, { marks: true });
  const solids = halfNames.map((half) => {
    const body = bodies[half];
    const solid = asSolid(scope, body, halfToPrint(half, input.disc), {
      id: `${half}-half`,
      title: `${half} half`,
      role: 'half',
      subjects: subjectsOf(input),
      lettered: labelCorners(half, input),
      estimated: input.placements.some(({ estimated }) => estimated),
      grazing: !input.parting.flat,
    });
    scope.drop(body);
    return solid;
  });
  return { solids, findings: bodies.stuck.map(leftOut) };
}

const leftOut = ({ volume, place }: LooseComponent): Finding =>
  finding('mold.loose-piece', {
    subject: 'halves',
    place,
    values: { measured: volume },
  });

/** What the halves, and all that is made from them, are built from; nothing else of the mold. */
export function halvesInput(mold: Mold): HalvesInput {
  const used = new Set(mold.placements.map(({ master }) => master));
  return {
    process: mold.process,
    revision: mold.revision,
    units: mold.units,
    disc: mold.disc,
    ...(mold.sprue && { sprue: mold.sprue }),
    masters: mold.masters.filter(({ id }) => used.has(id)),
    placements: mold.placements,
    bosses: mold.bosses,
    tabs: mold.tabs,
    notches: mold.notches,
    channels: mold.channels,
    ventPins: mold.ventPins,
    parting: mold.parting,
    fixture: mold.fixture,
  };
}

/** Ids in the plan the halves come from: a stop about any of them concerns them. */
export const subjectsOf = (input: HalvesInput): string[] => [
  'mold',
  'disc',
  ...(input.sprue ? ['sprue'] : []),
  ...[
    input.masters,
    input.placements,
    input.bosses,
    input.tabs,
    input.notches,
    input.channels,
    input.ventPins,
  ].flatMap((list) => list.map(({ id }) => id)),
];
