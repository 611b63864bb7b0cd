import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { concerns } from '../../src/pipeline/withhold.ts';
import { openRim } from '../example-findings.ts';

const solid = (id: string, ...subjects: readonly string[]) => ({ id, subjects });

const lower = solid('lower-half', 'mold', 'disc', 'sprue', 'ivy', 'ivy-1', 'boss-1', 'tab-1');
const sprueForm = solid('sprue-form', 'sprue');
const nut = solid('boss-cap-nut-m8', 'boss-1', 'boss-2');
const tab = solid('tab-1', 'tab-1');
const scaled = solid('scaled-ivy', 'ivy');
const buildUp = solid('build-up-01', 'ivy-1');
const all = [lower, sprueForm, nut, tab, scaled, buildUp];
const placements = [{ id: 'ivy-1', master: 'ivy' }];

/** Ids of the solids a stop about `subject` withholds. */
const withheld = (subject: string, solids = all): string[] =>
  solids.filter((one) => concerns(solids, { placements })(openRim(subject), one)).map(({ id }) => id);

describe('a stop concerns', () => {
  it.each([
    [
      'a master: whatever is made from it or its placements',
      'ivy',
      ['lower-half', 'scaled-ivy', 'build-up-01'],
    ],
    [
      'one placement: the halves and its build-up, not the master itself',
      'ivy-1',
      ['lower-half', 'build-up-01'],
    ],
    ['a boss: the halves and the solid that is laid in there', 'boss-1', ['lower-half', 'boss-cap-nut-m8']],
    ['a tab: the halves and the tab', 'tab-1', ['lower-half', 'tab-1']],
    ['the sprue: the halves and the form', 'sprue', ['lower-half', 'sprue-form']],
    ['one solid: that one', 'sprue-form', ['sprue-form']],
    ['the mold as a whole: what is made from all of it', 'mold', ['lower-half']],
    ['something that no solid knows: what is made from all of it', 'boss-9', ['lower-half']],
    ['a section of the plan: what is made from all of it', 'closing', ['lower-half']],
  ])('%s', (_, subject, ids) => {
    expect(withheld(subject)).toEqual(ids);
  });

  it('fixtures alone only where it is about them, when nothing else was asked for', () => {
    const asked = [sprueForm, tab];
    expect(withheld('ivy', asked)).toEqual([]);
    expect(withheld('mold', asked)).toEqual([]);
    expect(withheld('sprue', asked)).toEqual(['sprue-form']);
  });

  it('never nothing, while there is a solid made from the whole mold and no other has that name', () => {
    fc.assert(
      fc.property(fc.string(), (subject) => {
        const others = all.some(({ id, subjects }) => id === subject || subjects.includes(subject));
        expect(withheld(subject).length).toBeGreaterThan(0);
        if (!others) expect(withheld(subject)).toEqual(['lower-half']);
      }),
    );
  });
});
