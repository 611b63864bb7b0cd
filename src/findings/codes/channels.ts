import { codes } from './entry.ts';

/** A channel, whose it is, and what it meets. */
const meets = {
  measured: 'mm',
  limit: 'mm',
  kind: ['gate', 'vent'],
  placement: 'name',
  other: 'name',
  thing: ['boss', 'bolt', 'tab', 'notch'],
} as const;
const seenFromAbove = 'how far along its path the channel lies within the other, seen from above; over 0';
const goAround =
  'Move {other} out of its way, turn or move {placement} so that the {kind} passes it, or leave the {kind} out and cut one by hand.';

/** The way of gates and vents through the mold. */
export const channelCodes = codes({
  'channels.through': {
    severity: 'stop',
    means:
      'A gate or vent runs through a boss, a bolt, a tab or a notch: it is blocked or opens where it should not. Of a vent it is a warning.',
    formula: seenFromAbove,
    source: 'geometry',
    values: meets,
    says: 'The {kind} of {placement} runs through the {thing} {other} for {measured}.',
    remedy: goAround,
  },
  'channels.leads-out': {
    severity: 'stop',
    means:
      'A gate runs through the recess of a tab or through a notch, which are open to the rim: metal is thrown out while the mold spins.',
    formula: seenFromAbove,
    source: 'geometry',
    values: meets,
    says: 'The {kind} of {placement} runs through the {thing} {other} for {measured}, and that is open to the rim.',
    remedy: goAround,
    safety: true,
  },
  'channels.near': {
    severity: 'warn',
    means:
      'A gate passes so close by a boss, a bolt, a tab or a notch that the wall between them tears or lets metal through.',
    formula: 'least distance of the two outlines, seen from above',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: meets,
    says: 'The {kind} of {placement} leaves {measured} to the {thing} {other}, where {limit} is wanted.',
    remedy: 'Move {other}, turn or move {placement}, or make the {kind} narrower.',
  },
  'channels.build-up': {
    severity: 'warn',
    means:
      'A gate or vent runs over the build-up of another master: there is no rubber of the half to cut it into.',
    formula: seenFromAbove,
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name', other: 'name' },
    says: 'The {kind} of {placement} runs over the build-up of {other} for {measured}.',
    remedy:
      'Turn or move {placement} or {other} so that the {kind} passes it, or leave the {kind} out and cut one by hand.',
  },
  'channels.meet': {
    severity: 'warn',
    means:
      'Two channels of different cavities run into each other: metal or air of the one goes the way of the other.',
    formula: `${seenFromAbove}; what lies over the well is left out`,
    source: 'geometry',
    values: {
      measured: 'mm',
      limit: 'mm',
      kind: meets.kind,
      placement: 'name',
      other: 'name',
      otherKind: meets.kind,
    },
    says: 'The {kind} of {placement} and the {otherKind} of {other} run into each other for {measured}.',
    remedy: {
      other: 'Move {placement} and {other} apart, or make the channels narrower.',
      vents: 'Move {placement} and {other} apart, or say `joins: true` of both vents where that is meant.',
    },
  },
});
