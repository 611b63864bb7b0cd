import { codes } from './entry.ts';

/** A channel, whose it is, and what it meets. */
const meets = {
  measured: 'mm',
  limit: 'mm',
  kind: ['runner', 'gate', 'pocket', 'vent'],
  placement: 'name',
  other: 'name',
  thing: ['boss', 'bolt', 'tab', 'notch'],
} as const;
const seenFromAbove = 'how far along its path the channel lies within the other, seen from above; over 0';
const whose =
  '{kind, select, runner {runner {placement}} pocket {slowing pocket of {placement}} other {{kind} of {placement}}}';
const otherOne =
  '{otherKind, select, runner {runner {other}} pocket {slowing pocket of {other}} other {{otherKind} of {other}}}';
const goAround =
  '{kind, select, runner {Move {other} out of its way, or give the runner another one.} other {Move {other} out of its way, turn or move {placement} so that the {kind} passes it, or leave the {kind} out and cut one by hand.}}';

/** The way of gates and vents through the mold. */
export const channelCodes = codes({
  'channels.through': {
    severity: 'stop',
    means:
      'A gate or vent runs through a boss, a bolt, a tab or a notch: it is blocked or opens where it should not. Of a vent it is a warning.',
    formula: seenFromAbove,
    source: 'geometry',
    values: meets,
    says: `The ${whose} runs through the {thing} {other} for {measured}.`,
    remedy: goAround,
  },
  'channels.leads-out': {
    severity: 'stop',
    means:
      'A gate runs through the recess of a tab or through a notch, which are open to the rim: metal is thrown out while the mold spins.',
    formula: seenFromAbove,
    source: 'geometry',
    values: meets,
    says: `The ${whose} runs through the {thing} {other} for {measured}, and that is open to the rim.`,
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
    says: `The ${whose} leaves {measured} to the {thing} {other}, where {limit} is wanted.`,
    remedy:
      '{kind, select, runner {Move {other}, or make the runner narrower.} other {Move {other}, turn or move {placement}, or make the {kind} narrower.}}',
  },
  'channels.entry-off': {
    severity: 'warn',
    means:
      'The place where a gate or vent is to open into its cavity lies off the outline: the nearest point of the outline was taken.',
    formula:
      'least distance of the place from the outline, seen from above; over half the width of the channel',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name' },
    says: 'The entry of the {kind} of {placement} lies {measured} off the outline, where {limit} is allowed.',
    remedy: 'Correct x and y of the entry; they are of the master itself, from its middle.',
  },
  'channels.way-outside': {
    severity: 'stop',
    means: 'A way point of a gate or vent lies outside the disc: the channel is not cut.',
    formula: 'distance of the way point from the axis; over the radius of the disc',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', number: 'count', kind: meets.kind, placement: 'name' },
    says: `Way point {number, number} of the ${whose} lies {measured} from the axis, outside the disc of {limit} radius.`,
    remedy: 'Move it inward, or leave it out.',
  },
  'channels.tight': {
    severity: 'warn',
    means: 'A gate or vent bends more tightly than its width allows, or meets itself: it is not cut.',
    formula:
      'radius of the middle line in the room its neighbors leave, under 0.6 widths; or distance of two of its pieces, under one width',
    source: 'geometry; the least radius is common practice, no published source',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name' },
    says: {
      bend: `A bend of the ${whose} has room for a radius of {measured}, where {limit} is wanted.`,
      itself: `The ${whose} comes within {measured} of itself, where {limit} is wanted.`,
    },
    remedy: 'Move its way points apart, leave one out, or make the {kind} narrower.',
  },
  'channels.no-way': {
    severity: 'warn',
    means: 'There is no way for a gate or vent that keeps its walls: it is not cut.',
    formula: 'a search over all free places of the parting surface, seen from above, finds none',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: { limit: 'mm', kind: meets.kind, placement: 'name' },
    says: 'No way is found for the {kind} of {placement} that leaves {limit} to everything it passes.',
    remedy:
      'Choose another entry, make the {kind} narrower, move what stands round {placement}, or ask for a thinner wall.',
  },
  'channels.through-own': {
    severity: 'warn',
    means: 'A gate or vent runs through the cavity it leads to, or along its edge, before it ends there.',
    formula: 'length of its path within the outline of the cavity, seen from above; over its width',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name' },
    says: 'The {kind} of {placement} lies within its own cavity for {measured}, where {limit} is wanted.',
    remedy: 'Say `path: routed`, give it way points, or choose another entry.',
  },
  'channels.no-parent': {
    severity: 'warn',
    means:
      'A gate is to lead out of a runner or another gate, or a vent into another one, that is not there, or that itself waits for this one: it is not cut.',
    formula: 'the other channel is drawn before it',
    source: 'the plan',
    values: { kind: meets.kind, placement: 'name' },
    says: 'The {kind} of {placement} has no other {kind, select, gate {gate, nor a runner, to lead out of} other {vent to open into}}.',
    remedy: 'Give the placement it names a {kind} of its own, to the well or the rim.',
  },
  'channels.slant': {
    severity: 'warn',
    means: 'A gate leans so far from the radius that it passes the well by: it is not cut.',
    formula:
      'distance from the axis of the cavity end times the sine of the slant; over the radius of the well',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name' },
    says: 'The {kind} of {placement} passes the axis at {measured}, where it would have to come within {limit}.',
    remedy: 'Give it less slant, or an arc.',
  },
  'channels.misses': {
    severity: 'warn',
    means:
      'A gate or vent does not open into its cavity: where it ends, the cavity lies over or under it. No metal comes in, or no air out.',
    formula: 'points of its section along its last piece, none of them within the cavity (winding number)',
    source: 'geometry',
    values: { kind: meets.kind, placement: 'name' },
    says: 'The {kind} of {placement} does not open into its cavity.',
    remedy:
      'Choose another entry, make the {kind} deeper, cut it into the other half, or sink {placement} differently.',
  },
  'channels.build-up': {
    severity: 'warn',
    means:
      'A gate or vent runs over the build-up of another master: there is no rubber of the half to cut it into.',
    formula: seenFromAbove,
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', kind: meets.kind, placement: 'name', other: 'name' },
    says: `The ${whose} runs over the build-up of {other} for {measured}.`,
    remedy:
      '{kind, select, runner {Move {other} out of its way, or give the runner another one.} other {Turn or move {placement} or {other} so that the {kind} passes it, or leave the {kind} out and cut one by hand.}}',
  },
  'channels.meet': {
    severity: 'warn',
    means:
      'Two channels that do not belong together run into each other: metal or air of the one goes the way of the other.',
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
    says: `The ${whose} and the ${otherOne} run into each other for {measured}.`,
    remedy: {
      other: 'Move {placement} and {other} apart, or make the channels narrower.',
      vents: 'Move {placement} and {other} apart, or say `joins: true` of both vents where that is meant.',
    },
  },
  'channels.web': {
    severity: 'warn',
    means:
      'Two channels for metal run side by side with a knife-thin web between them, as a sharp tongue where they leave the well: it tears, or bends into the stream.',
    formula: 'least distance of the two outlines where they lie in no other hollow, seen from above',
    source: 'geometry; limit by common practice, no published source, editable in the plan as `limits.web`',
    values: {
      measured: 'mm',
      limit: 'mm',
      kind: meets.kind,
      placement: 'name',
      other: 'name',
      otherKind: meets.kind,
    },
    says: `Between the ${whose} and the ${otherOne} a web of {measured} is left, where {limit} is wanted.`,
    remedy: 'Make them narrower, lead them apart, or make one of the two out of the other with `from`.',
  },
  'channels.past-rim': {
    severity: 'stop',
    means:
      'A runner, or the blind pocket of a slowing bend, comes so near to the rim that metal under pressure breaks out while the mold spins.',
    formula: 'distance of its outermost edge from the axis; over the radius of the disc less the wall wanted',
    source: 'geometry; starting limit from memory, editable in the plan as `limits.wall`',
    values: { measured: 'mm', limit: 'mm', kind: ['runner', 'pocket'], placement: 'name' },
    says: `The ${whose} reaches to {measured} from the axis, where {limit} leaves the wall wanted to the rim.`,
    remedy: 'Move it inward, or make it narrower.',
    safety: true,
  },
  'channels.over-well': {
    severity: 'stop',
    means: 'A runner ends over the well, or a ring touches it: there is nothing for it to lead to.',
    formula:
      'distance from the axis of its end, or of the inner edge of a ring; not over the radius of the well',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', placement: 'name' },
    says: 'The runner {placement} reaches only to {measured} from the axis, over the well of {limit} radius.',
    remedy: 'Move it outward, or leave it out and lead the gates from the well.',
  },
  'channels.in-cavity': {
    severity: 'stop',
    means: 'A runner runs through a cavity: the casting is one with it, and metal goes on by the cavity.',
    formula: 'true distance of the placed meshes; 0',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', other: 'name' },
    says: 'The cavity of {other} lies in the way of this runner.',
    remedy:
      'Move {other} or the runner so that a wall of {limit} is left, and lead a gate from the one to the other.',
  },
  'channels.feeds-nothing': {
    severity: 'warn',
    means: 'No gate leads out of a runner: metal fills it for nothing.',
    formula: 'gates of the plan that name it in `from`',
    source: 'the plan',
    values: { placement: 'name' },
    says: 'The runner {placement} feeds nothing.',
    remedy: 'Say `from: {placement}` of the gates it is to feed, or leave it out.',
  },
  'channels.out-of-reach': {
    severity: 'warn',
    means:
      'A gate is to lead out of a runner that lies on the other side of the well: metal would come to it straight from the well. It is not cut.',
    formula:
      'least distance from the axis of the way to the nearest place of the runner; under the radius of the well',
    source: 'geometry',
    values: { measured: 'mm', limit: 'mm', placement: 'name', other: 'name' },
    says: 'The gate of {placement} reaches the runner {other} only across the well: it passes the axis at {measured}, within its radius of {limit}.',
    remedy:
      'Lead the gate from the well or from another runner, say `path: routed`, or lead the runner past {placement}.',
  },
  'channels.no-turn': {
    severity: 'warn',
    means: 'A slowing bend hardly turns: metal goes round it with its speed.',
    formula: 'angle between the way to the last way point and the way on to the cavity; under 45 degrees',
    source: 'common practice, no published source',
    values: { measured: 'deg', limit: 'deg', placement: 'name' },
    says: 'The slowing bend of {placement} turns by {measured}, where {limit} is wanted.',
    remedy: 'Move its last way point farther aside, or nearer to the cavity.',
  },
});
