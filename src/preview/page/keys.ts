import { useEffect } from 'preact/hooks';
import { redo, undo } from '../state/actions.ts';
import { save } from '../state/disk.ts';
import { arranging, cancelDrag, nudge, removeThing } from '../state/drag.ts';
import { dragState } from '../state/drag-state.ts';
import { onPourKey } from '../state/pour-entry.ts';
import { picked } from '../state/store.ts';

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** In a field, keys are the field's own. */
const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && /^(input|select|textarea)$/i.test(target.tagName);

function onKey(event: KeyboardEvent): void {
  const letter = event.key.toLowerCase();
  const isCommand = event.ctrlKey || event.metaKey;
  if (isCommand && letter === 's') void save();
  else if (isField(event.target) || document.querySelector('dialog[open]')) return;
  else if (isCommand && letter === 'z') (event.shiftKey ? redo : undo)();
  else if (isCommand && letter === 'y') redo();
  else if (isCommand || event.altKey) return;
  else if (!onPourKey(letter) && !(arranging.peek() && onThings(event))) return;
  event.preventDefault();
  event.stopPropagation();
}

/** Keys for the picked thing; tells whether it was one. */
function onThings({ key }: KeyboardEvent): boolean {
  const id = picked.peek();
  if (id === undefined) return false;
  const arrow = arrows[key];
  if (arrow) nudge(...arrow);
  else if (key === 'Delete') removeThing(id);
  else if (key === 'Escape' && dragState.peek()) cancelDrag();
  else return false;
  return true;
}

/** Keys that work wherever the focus is. Taken before the picture moves by them. */
export function useKeys(): void {
  useEffect(() => {
    addEventListener('keydown', onKey, { capture: true });
    return () => removeEventListener('keydown', onKey, { capture: true });
  }, []);
}
