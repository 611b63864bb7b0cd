import { type Proposal, whereAir, whyGate, whyWay } from '../src/fill/index.ts';
import type { UnitSystem } from '../src/findings/index.ts';
import { showQuantity } from '../src/wording/index.ts';
import { strong, wrap } from './terminal.ts';

type Cut = NonNullable<Proposal['gate']> | Proposal['ways'][number];
type Left = Proposal['left'][number];

/** What is to be done about air that no proposal lets out. */
function whyLeft({ why }: Left, units: UnitSystem): string {
  if (why.reason === 'away') {
    const over = showQuantity(Math.abs(why.over), 'mm', units);
    return `it stands ${over} ${why.over < 0 ? 'below' : 'above'} the parting surface, where no knife comes: turn or tip the part, or bore a pin through the half`;
  }
  return {
    'no-way': 'a vent or gate there finds no way that keeps its walls: turn the part, or give it more room',
    'no-help': 'a vent or gate there lets no more out, for metal shuts it first: turn or tip the part',
    enough: 'there are as many vents as one cavity gets: turn or tip the part',
  }[why.reason];
}

/** What is proposed for each kind of cavity, and why. */
export const showProposals = (proposals: readonly Proposal[], units: UnitSystem, width: number): string =>
  proposals.map((one) => showProposal(one, units, width)).join('\n\n');

function showProposal(proposal: Proposal, units: UnitSystem, width: number): string {
  const { placements, gate, ways, left, before, after } = proposal;
  const air = (forecast: Proposal['before']): string =>
    forecast
      ? showQuantity(
          forecast.places.reduce((sum, { volumes }) => sum + volumes[0], 0),
          'mm3',
          units,
        )
      : 'not known, no gate opens into it';
  const staying = left.map((one) => {
    const { volume, where, place } = one.pocket;
    const [air, far] = [
      showQuantity(volume, 'mm3', units),
      showQuantity(Math.hypot(place[0], place[1]), 'mm', units),
    ];
    return `${air} stay ${whereAir[where]}, ${far} from the axis: ${whyLeft(one, units)}`;
  });
  const lines = [
    gate ? `gate at the ${whyGate(gate, units)}` : 'gate: as the plan has it',
    ...ways.map((one) => `${one.way.sort === 'gate' ? 'gate more' : 'vent'}: ${whyWay(one, units)}`),
    ...(ways.length === 0 ? ['no vent more'] : []),
    `air that stays: ${air(before)} before, ${air(after)} after`,
    ...staying,
  ];
  return [strong(placements.join(', ')), ...lines.map((line) => wrap(line, width, '  ', '    '))].join('\n');
}

/** The same as data: lengths in mm, volumes in mm3, places in the mold as it lies with the first cavity on +x. */
export const proposalsAsData = (proposals: readonly Proposal[]) =>
  proposals.map(({ placements, gate, ways, left, before, after }) => ({
    placements,
    ...(gate && { gate: { ...cutOf(gate), ...(gate.opened && { opened: gate.opened }) } }),
    ways: ways.map((one) => ({ kind: one.way.sort, ...cutOf(one), frees: one.frees })),
    ...(before && { before: airOf(before) }),
    ...(after && { after: airOf(after) }),
    left: left.map(({ pocket: { volume, where, place }, why }) => ({ volume, where, place, why })),
  }));

function cutOf({ side, way: { listed } }: Cut) {
  const { entry, path, width, depth, half } = listed;
  return { side, entry, path, width, depth, half };
}

/** Of each place, under each of the assumptions. */
const airOf = ({ places }: NonNullable<Proposal['before']>) =>
  places.map(({ stays, volumes }) => ({ stays, volumes }));
