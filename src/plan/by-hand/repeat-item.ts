import { findItem, type ItemName, type Place } from './item.ts';
import { entryPath, placeText, replaceWhere, writtenRadius } from './places.ts';
import { type Edited, editPlan, fieldAt, setValues, splice } from './splice.ts';
import { writeAngle } from './written.ts';

/**
 * The plan's text with an item repeated round the disc, `count` in all at equal angles. A single placement or boss
 * becomes a ring that starts where it lies; a ring gets the new count; of a list, the one place is joined by others.
 */
export const repeatRound = (text: string, name: ItemName, count: number): Edited =>
  editPlan(text, (draft) => {
    const item = findItem(draft.plan, name);
    if (!item) return { fault: `The plan has no ${name.kind} ${name.id}.` };
    if (item.by === 'angle') return { fault: 'Tabs and notches are added to the plan one by one.' };
    const write = writtenRadius(draft, item);
    const { radius, angleRad, turnRad } = item.places[item.place];
    if (item.by === 'at') {
      const ring = `{ count: ${count}, radius: ${write(radius)}, start: ${writeAngle(angleRad)} }`;
      return replaceWhere(draft, item, 'ring', [ring]);
    }
    const path = entryPath(item);
    if (item.by === 'ring') {
      const ring = [...path, 'ring'];
      const rule = fieldAt(draft, ring, 'spacing') ?? fieldAt(draft, ring, 'perSector');
      if (rule) return splice(text, rule.from, rule.to, `count: ${count}`);
      return setValues(text, [{ path: [...path, 'ring', 'count'], value: String(count) }]);
    }
    const others = Array.from({ length: count - 1 }, (_, i): Place => {
      return { radius, angleRad: angleRad + (2 * Math.PI * (i + 1)) / count, turnRad };
    });
    const texts = [...item.places, ...others].map((place) => placeText(place, write));
    return replaceWhere(draft, item, 'each', texts);
  });
