import { loose } from '../scene/kinds.ts';
import { apart, hidden, pose } from '../state/view.ts';

/** What stands between the eye and the cavities; opened like a book, the upper half no longer does. */
const inTheWay = {
  stacked: ['upper half'],
  'open book': [],
  always: [...loose, 'build-up'],
} as const;

/** Closes the mold and hides what is in the way while a sheet is open, unless the person chooses otherwise meanwhile. */
export function clearTheWay(): () => void {
  const before = hidden.peek();
  const cleared = new Set([...before, ...inTheWay.always, ...inTheWay[pose.peek()]]);
  hidden.value = cleared;
  const apartBefore = apart.peek();
  apart.value = 0;
  return () => {
    if (hidden.peek() === cleared) hidden.value = before;
    if (apart.peek() === 0) apart.value = apartBefore;
  };
}
