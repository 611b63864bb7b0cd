import type { SolidRole } from '../kernel/index.ts';

/** What a solid of each role is for at the bench, in one sentence. */
export const roleUse: Readonly<Record<SolidRole, string>> = {
  half: 'One half of the mold: to print or mill as a test half, to look at, or to cut rubber by.',
  blank: 'A half without cavities: the disc as it is cut from stock, to check the can and the layout with.',
  'sprue form': 'Stands in the middle while the mold is made and leaves the well and the pouring hole.',
  plug: 'Keeps the pouring hole of the upper half open during the cure; pulled out afterwards.',
  boss: 'Stands in the lower half and leaves its socket in the upper, so that the halves close one way.',
  'boss cup':
    'Takes the head of a loose boss: to try its fit, and as a sleeve in the upper half where the rubber over it is thick enough.',
  'build-up': 'Lies under a thin bit of a master, so that it does not bend when the mold is pressed.',
  tab: 'Lies in the parting line at the rim; the blade that parts the halves goes in its slot.',
  notch: 'Laid against the rim of both halves, it leaves the mark that shows how they belong together.',
  'scaled master': 'The master with the shrink allowances added, to print and to make the mold from.',
  'pattern plate': 'Silicone or resin is poured on it and becomes a half.',
  jig: 'Dropped into the can or onto the disc, it holds every boss in its place while it is set.',
  'layout plate':
    'Laid on the lower half, it shows where each master lies, how it is turned and how deep it sinks.',
  nest: 'Laid on the parting face of its half, it shows by its numbers where each build-up goes; lifted off before closing.',
  'can part': 'Lies in the can with the disc, to center it or to stop it at its thickness.',
  gauge: 'Held against a master, it shows whether it is sunk as deep as the plan says.',
  'left by the cutter': 'What the end mill of the plan leaves standing in a half: to look at, not to make.',
};
